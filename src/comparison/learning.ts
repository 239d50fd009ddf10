import type { EyeGroup } from '../analysis/sample.js';
import type { ResultRow } from '../records/result.js';

/** A surgeon's first eyes with something new, in which practice may still be lacking (*judgement*). */
export const firstEyes = 20;

/** What an order of operations is read from, one entry an eye. */
export interface OperationOrder {
  /** Negative where the first eye was operated before the second, 0 where nobody can tell. */
  compare(a: number, b: number): number;
  /** Whether it is known when, or as which in its year, the eye was operated. */
  isKnown(eye: number): boolean;
  /** Code of the surgeon; the same for all where surgeons are not recorded. */
  surgeon: ArrayLike<number>;
}

/** Eyes by surgeon, in the order of their operations. */
function seriesOf(eyes: Int32Array, { compare, isKnown, surgeon }: OperationOrder): readonly (readonly number[])[] {
  const series = new Map<number, number[]>();
  for (const eye of eyes) {
    if (!isKnown(eye)) continue;
    const code = surgeon[eye] as number;
    const own = series.get(code);
    if (own) own.push(eye);
    else series.set(code, [eye]);
  }
  return Array.from(series.values(), (one) => one.sort((a, b) => compare(a, b) || a - b));
}

/**
 * How many eyes of a cohort are among the first 20 that their surgeon did with what marks the cohort, where the surgeon
 * took it up during the audit: at least 20 eyes of other cohorts come before.
 *
 * @param cohort  eligible eyes of the cohort
 * @param all     eligible eyes of all cohorts
 * @returns a row whose value is undefined where no order of operations is known
 * @source decision of the project: learning order is told, not modelled
 * @example learningRow(laser, eligible, order, patient).value // 20: one surgeon's first eyes
 */
export function learningRow(cohort: EyeGroup, all: Int32Array, order: OperationOrder, patient: Int32Array): ResultRow {
  const own = new Set(cohort.eyes);
  const early = seriesOf(all, order).flatMap((series) => {
    const mine = series.filter((eye) => own.has(eye));
    const isTakenUp = mine.length > 0 && series.indexOf(mine[0] as number) >= firstEyes;
    return isTakenUp ? mine.slice(0, firstEyes) : [];
  });
  const known = cohort.eyes.filter(order.isKnown);
  return {
    measure: 'confounding',
    group: cohort.key,
    statistic: 'early_eyes',
    value: known.length === 0 ? undefined : early.length,
    ci_low: undefined,
    ci_high: undefined,
    n: known.length,
    eyes: cohort.eyes.length,
    patients: new Set(known.map((eye) => patient[eye] as number)).size,
    unit: 'eyes',
    method: 'count',
    note: known.length === 0 ? 'not-estimable:no-order' : early.length > 0 ? 'learning' : '',
  };
}
