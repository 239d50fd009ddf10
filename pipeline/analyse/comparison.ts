import { numbersOf } from '../../src/columns/table.js';
import { primariesOf } from '../../src/comparison/primaries.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { baselineCompared } from './baseline.js';
import { confoundingRows } from './confounding.js';
import { covariatesOf } from './covariates.js';
import { formulasCompared } from './formulas.js';
import type { Groups } from './groups.js';
import { type OutcomeSettings, outcomesCompared } from './outcomes.js';
import { sensitivityRows } from './sensitivity.js';

/** How many intervals share the declared error, and the level that is left for each. */
function primariesRows({ primaries }: OutcomeSettings, eyes: number): readonly ResultRow[] {
  const row = (statistic: string, value: number, unit: string): ResultRow => ({
    measure: 'primaries',
    group: 'all',
    statistic,
    value,
    ci_low: undefined,
    ci_high: undefined,
    n: eyes,
    eyes,
    patients: 0,
    unit,
    method: 'bonferroni',
    note: '',
  });
  return [row('count', primaries.k, ''), row('confidence', primaries.level, 'share')];
}

/** Everything that stands beside one group's own numbers: cohorts, formulas, and the same with fewer eyes. */
export function comparisonRows(derived: Derived, groups: Groups, plan: Plan): readonly ResultRow[] {
  const { comparisons } = groups;
  const hasPrediction = numbersOf(derived.eyes, 'prediction_error').some(Number.isFinite);
  const primaries = primariesOf(plan, derived.registry, comparisons.length, hasPrediction);
  const settings = { derived, plan, primaries, covariates: covariatesOf(derived, plan) };
  return [
    ...(comparisons.length > 0 ? primariesRows(settings, derived.eyes.numRows()) : []),
    ...confoundingRows(derived, groups),
    ...baselineCompared(comparisons, derived, plan),
    ...outcomesCompared(comparisons, settings),
    ...formulasCompared(derived, groups, plan),
    ...sensitivityRows(groups, settings),
  ];
}
