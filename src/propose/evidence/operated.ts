import { propose as words } from '../../words/en/propose.js';
import type { ArrangedFile } from '../arrange.js';
import type { Choice } from '../choices.js';
import type { AuditView } from '../operations.js';
import type { SurveyedFile } from './surveyed.js';

/** Rows of the file and different eyes among them. */
function rowsAndEyes(one: SurveyedFile): { rows: number; eyes: number } {
  const eyeOf = one.eyeOf();
  const eyes = new Set<string>();
  for (let row = 0; eyeOf && row < one.of.file.rows; row++) {
    const eye = eyeOf(row);
    if (eye !== undefined) eyes.add(eye);
  }
  return { rows: one.of.file.rows, eyes: eyes.size };
}

/**
 * Where no file lists operations and a file has one row an eye: is every eye of it an operated one? An audit without
 * operations has nothing to report, so that this is likelier, and said.
 */
export function operatedChoice(one: SurveyedFile & { arranged: ArrangedFile }, audit: AuditView): Choice | undefined {
  const exams = one.arranged.blocks.filter(({ holds }) => holds === 'exam');
  if (audit.operates || one.arranged.lacks || exams.length === 0 || exams.some(({ assumed, side }) => !assumed || side))
    return undefined;
  const { rows, eyes } = rowsAndEyes(one);
  const onePerEye = eyes >= 0.98 * rows;
  return {
    id: `operated ${one.of.file.file}`,
    kind: 'operated',
    label: one.of.file.label,
    header: '',
    found: words.found.operated,
    options: [
      { value: 'outcome', evidence: onePerEye ? words.evidence.onePerEye(rows) : '' },
      { value: 'before', evidence: '' },
      { value: 'none', evidence: '' },
    ],
    likelier: onePerEye ? 'outcome' : undefined,
  };
}
