import { propose as words } from '../../words/en/propose.js';
import { type Answers, type Choice, settled } from '../choices.js';
import { choiceDoubt } from './field-forms.js';
import { type YamlLine, yamlText } from './lines.js';

/** The prediction that counts, where several formulas predict and none is the operation's own. */
export function predictionLines(choice: Choice | undefined, answers: Answers): readonly YamlLine[] {
  if (!choice) return [];
  const taken = settled(choice, answers);
  const options = taken === undefined ? choice.options.map(({ value }) => value) : [taken];
  const off = taken === undefined;
  const doubts = choiceDoubt(choice, taken, answers);
  const lines = options.map((value): YamlLine => ({ depth: 1, text: `primary_formula: ${yamlText(value)}`, off }));
  return [{ depth: 0, text: 'predictions:', off, doubts }, ...lines];
}

/** What no export can tell, each with the default that holds as long as the line is a comment. */
export function remainingLines(hasTechnique: boolean): readonly YamlLine[] {
  const off = true;
  return [
    { depth: 0, text: '', notes: [words.sections.rest] },
    { depth: 0, text: 'eligibility:', off },
    { depth: 1, text: 'eyes_per_patient: both', comment: words.unknown.eyesPerPatient, off },
    { depth: 1, text: 'exclude:', off },
    {
      depth: 2,
      text: '- { where: axial_length, above: 30, reason: Axial length over 30 mm }',
      comment: words.unknown.exclude,
      off,
    },
    { depth: 0, text: 'cohorts:', off },
    { depth: 1, text: `by: ${hasTechnique ? 'technique' : 'site'}`, comment: words.unknown.cohorts, off },
    { depth: 0, text: 'policies:', off },
    { depth: 1, text: 'vertex_mm: 12', comment: words.unknown.policyVertex, off },
    { depth: 0, text: 'outputs:', off },
    { depth: 1, text: 'tables: [csv, md]', comment: words.unknown.tables, off },
    { depth: 1, text: 'small_cells: 0', comment: words.unknown.smallCells, off },
  ];
}
