import type { Measure } from '../records/measure.js';
import type { Plan } from '../records/plan.js';
import { holm } from '../statistics/cohorts/holm.js';
import { type Compared, comparedBy, namesOf } from './compared.js';

/** A measure's name in results.csv: a vector is one measure. */
export const nameOf = ({ name, vector }: Measure): string => vector?.name ?? name;

/** 'prediction_error/mean' and 'prediction_error/difference_mean'. */
function keysOf(measure: Measure, one: Compared): readonly string[] {
  return namesOf(one).map((name) => `${nameOf(measure)}/${name}`);
}

/** The declared outcomes that carry a verdict, in how many comparisons, and the level that they share. */
export interface Primaries {
  /** Outcomes × comparisons. */
  k: number;
  /** Level of their intervals: 1 − (1 − confidence)/k. */
  level: number;
  includes(measure: Measure, one: Compared): boolean;
}

/** The default primary follows the error that the audit has: without predictions it is that against the target. */
function declaredPrimaries(plan: Plan, hasPrediction: boolean): readonly string[] {
  const { primary } = plan.statistics;
  if (hasPrediction) return primary;
  return primary.map((name) =>
    name === 'prediction_error/share_within_0.50' ? 'target_error/share_within_0.50' : name,
  );
}

/**
 * The primary outcomes of an audit. Two names of one statistic count once.
 *
 * @param comparisons    cohorts that are compared with the reference
 * @param hasPrediction  whether any eye has a prediction error
 * @source Bonferroni for intervals, Holm for p: this project's statistics page
 */
export function primariesOf(
  plan: Plan,
  registry: readonly Measure[],
  comparisons: number,
  hasPrediction: boolean,
): Primaries {
  const declared = new Set(declaredPrimaries(plan, hasPrediction));
  const includes = (measure: Measure, one: Compared): boolean =>
    keysOf(measure, one).some((name) => declared.has(name));
  const chosen = registry.flatMap((measure) => comparedBy(measure).filter((one) => includes(measure, one)));
  const k = Math.max(1, chosen.length * comparisons);
  return { k, level: 1 - (1 - plan.statistics.confidence) / k, includes };
}

/** What audit.yaml declares for one statistic, under either of its names. */
export function declaredFor(
  declared: Readonly<Record<string, number>>,
  measure: Measure,
  one: Compared,
): number | undefined {
  return keysOf(measure, one)
    .map((name) => declared[name])
    .find((value) => value !== undefined);
}

/**
 * Holm's adjustment over the declared family; an outcome without a test keeps its place in the count.
 *
 * @returns adjusted values in the order given; undefined where there is no test
 */
export function adjusted(p: readonly (number | undefined)[]): readonly (number | undefined)[] {
  const values = holm(p.map((value) => value ?? 1));
  return p.map((value, i) => (value === undefined ? undefined : values[i]));
}
