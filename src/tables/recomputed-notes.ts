import { recomputedFormulas } from '../predictions/recomputed.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { formulaOf } from './formula-measures.js';

/** Formulas that the audit computed and has errors of, as its results name them. */
export function recomputedShown({ rows }: Pick<Results, 'rows'>, plan: Plan): readonly string[] {
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

/** The caution that goes with every number made from a recomputed prediction. */
export function recomputedNote(results: Pick<Results, 'rows'>, plan: Plan, words: Words): readonly string[] {
  const shown = recomputedShown(results, plan);
  return shown.length === 0 ? [] : [words.tables.recomputed.caution(shown.join(', '))];
}

/** That refractions were corrected for the length of the lane; nothing where they stand as recorded. */
export function laneNote({ policies }: Plan, words: Words): readonly string[] {
  return policies.lane === 'as-recorded' ? [] : [`${words.tables.recomputed.lane}.`];
}
