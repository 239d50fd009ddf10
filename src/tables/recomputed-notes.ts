import { count } from '../format/number.js';
import { recomputedFormulas } from '../predictions/recomputed.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { formulaOf } from './formula-measures.js';

type Rows = Pick<Results, 'rows'>;

/** Formulas that the audit computed and has errors of, as its results name them. */
export function recomputedShown({ rows }: Rows, plan: Plan): readonly string[] {
  const named = new Set(rows.flatMap(({ measure, statistic, n }) => (statistic === 'n' && n > 0 ? [measure] : [])));
  const { primary_formula: primary } = plan.predictions;
  const labels = recomputedFormulas(plan, suppliedOf(rows)).map(({ label }) => label);
  return labels.filter((label) => label === primary || named.has(`prediction_error:${label}`));
}

/** A formula under its own name and as recomputed: then the name alone is the supplied one. */
function suppliedOf(rows: Results['rows']): readonly string[] {
  const shown = new Set(rows.flatMap(({ measure }) => formulaOf(measure) ?? []));
  return [...shown].filter((formula) => shown.has(`${formula}, recomputed`));
}

/** That predictions of these formulas were made by the audit, looking back. */
export function lookBack(formulas: readonly string[], words: Words): string {
  return words.tables.recomputed.caution(formulas.join(', '));
}

/** The caution that goes with every number made from a recomputed prediction. */
export function recomputedNote(results: Rows, plan: Plan, words: Words): readonly string[] {
  const shown = recomputedShown(results, plan);
  return shown.length === 0 ? [] : [lookBack(shown, words)];
}

/** The same where the primary prediction is recomputed: of numbers that stand on no other. */
export function primaryRecomputedNote(results: Rows, plan: Plan, words: Words): readonly string[] {
  const shown = recomputedShown(results, plan).filter((label) => label === plan.predictions.primary_formula);
  return shown.length === 0 ? [] : [lookBack(shown, words)];
}

const measurePrefix = 'recomputed:';
const refusedPrefix = 'count_refused:';

/** Counts of one kind, formula by formula, as the recomputed predictions have them; without zeros. */
function countsOf({ rows }: Rows, statistic: (name: string) => boolean) {
  return rows
    .filter((row) => row.measure.startsWith(measurePrefix) && statistic(row.statistic) && row.value)
    .map(({ measure, statistic: name, value }) => ({
      formula: measure.slice(measurePrefix.length),
      name,
      eyes: count(value as number),
    }));
}

/** Eyes in which the SRK/T formula is near its cusp. */
export function cuspNote(results: Rows, words: Words): readonly string[] {
  return countsOf(results, (name) => name === 'count_unreliable_position').map(({ eyes }) =>
    words.tables.recomputed.cusp(eyes),
  );
}

/** Eyes that recomputed formulas do not predict, by reason, and those where they can hardly be relied on. */
export function refusalNotes(results: Rows, words: Words): readonly string[] {
  const { refusals, refused, refusedOf, refusedFor, unusual } = words.tables.recomputed;
  const found = countsOf(results, (name) => name.startsWith(refusedPrefix));
  const told = [...new Set(found.map(({ formula }) => formula))].map((formula) => {
    const own = found.filter((one) => one.formula === formula);
    const reasons = own.map(({ name, eyes }) => {
      return refusedFor(refusals[name.slice(refusedPrefix.length) as keyof typeof refusals], eyes);
    });
    return refusedOf(formula, reasons.join(', '));
  });
  const guessed = countsOf(results, (name) => name === 'count_unusual_biometry');
  return [
    ...(told.length > 0 ? [refused(told.join('; '))] : []),
    ...(guessed.length > 0 ? [unusual(guessed.map(({ formula, eyes }) => refusedFor(formula, eyes)).join('; '))] : []),
    ...cuspNote(results, words),
  ];
}

/**
 * What was done to refractions before they were compared: corrected for the length of the lane, restated for another
 * vertex distance; nothing where all stand as recorded.
 */
export function policyNotes({ find }: Pick<Results, 'find'>, { policies }: Plan, words: Words): readonly string[] {
  const { lane, vertexAll, vertexFar } = words.tables.recomputed;
  const restated = find('provenance', 'all', 'vertex_restated')?.value ?? 0;
  const vertex = policies.vertex === 'as-recorded' ? vertexFar : vertexAll;
  return [
    ...(policies.lane === 'as-recorded' ? [] : [`${lane}.`]),
    ...(restated === 0 ? [] : [vertex(count(restated))]),
  ];
}
