import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { cohortColumns } from './cohorts.js';
import { errorRows } from './error-rows.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { formulasOf } from './formula-measures.js';
import { groupPairs, valueLabel } from './groups.js';
import { policyNotes, recomputedNote, refusalNotes } from './recomputed-notes.js';
import { cohortHead, statisticStub } from './rows.js';
import type { Setting, UnnumberedTable } from './shapes.js';
import { valueText } from './value-text.js';

/**
 * How close to plan: prediction error, the same centred, target error, and the errors of further formulas. Prediction
 * and target are never one block: the first judges the calculation, the second what the patient was promised.
 */
export function refractiveAccuracy(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const errors = errorBlocks(setting);
  if (errors.length === 0) return undefined;
  const { notes, titles } = words.tables;
  const { centred, sign, thresholds } = notes.refraction;
  const shown = errors.map(({ measure }) => measure);
  return finish(
    {
      id: 'refractive-accuracy',
      title: titles['refractive-accuracy'](outcomeVisit(plan, words)),
      head: cohortHead(setting, statisticStub(setting), 'flow:refraction', 'analysed'),
      rows: errors.flatMap(({ measure, label }) => errorRows(setting, measure, label)),
      footnotes: [
        sign(plan.policies.lane),
        ...(shown.includes('prediction_error') ? [predictionNote(plan, words)] : []),
        ...(shown.includes('prediction_error_centred') ? [centred, ...centringNotes(setting)] : []),
        thresholds,
        ...recomputedNote(results, plan, words),
        ...refusalNotes(results, words),
        ...policyNotes(results, plan, words),
        ...followUpNotes(setting, ['refraction']),
      ],
    },
    setting,
  );
}

/** Lens models whose centring is provisional, and those that are not centred, with their eyes. */
function centringNotes({ results, words }: Setting): readonly string[] {
  const { modelEyes, notCentred, provisional } = words.tables.notes.refraction;
  const modelsWith = (note: string): string =>
    results.rows
      .filter((row) => row.measure === 'centring' && row.note === note)
      .map((row) => modelEyes(valueLabel(groupPairs(row.group)[0]?.[1] ?? '', words), valueText(row, words)))
      .join('; ');
  const [few, none] = [modelsWith('centring:provisional'), modelsWith('centring:none')];
  return [...(few ? [provisional(few)] : []), ...(none ? [notCentred(none)] : [])];
}

/** Which prediction the errors are measured against. */
function predictionNote({ predictions }: Plan, words: Words): string {
  const { formula, planned } = words.tables.notes.refraction;
  const name = predictions.primary_formula;
  return name === undefined || name === 'planned' ? planned : formula(name);
}

/** The errors that at least one eye has, in the order of the table. */
function errorBlocks({ results, words }: Setting): readonly { measure: string; label: string }[] {
  const { blocks } = words.tables;
  const others = formulasOf(results).map(({ measure, formula }) => ({ measure, label: blocks.formula(formula) }));
  return [
    { measure: 'prediction_error', label: blocks.prediction },
    { measure: 'prediction_error_centred', label: blocks.centred },
    { measure: 'target_error', label: blocks.target },
    ...others,
  ].filter(({ measure }) => results.find(measure, 'all', 'n')?.value);
}
