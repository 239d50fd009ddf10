import { tQuantile } from '../distributions.js';
import { expectConfidence } from '../expectations.js';
import { patientsOf } from '../patients.js';
import { sorted } from '../quantile.js';
import { bareComparison, type Comparison, comparable, contrastVariance } from './contrast.js';
import type { Cohorts } from './design.js';
import { placements } from './placements.js';

/**
 * Hodges–Lehmann shift: the median of all differences a − b, with limits at the type-7 quantiles of these differences
 * at ½ ± t(f)·√V, V that of the relative effect after A is aligned by the shift.
 *
 * @param a, b       values of the eyes of A and of B, in one unit
 * @param cohorts    their patients, from `recogniseDesign`
 * @param confidence such as 0.95
 * @returns p undefined: the test is that of `relativeEffect`; standardError and df are of the aligned relative effect
 * @throws {RangeError} as `meanDifference`
 * @source Hodges JL, Lehmann EL. Ann Math Stat 1963;34:598–611; limits by this project's statistics page
 * @example shift(Float64Array.of(2, 3, 4, 5, 6), Float64Array.of(1, 2, 3, 4, 5), cohorts, 0.95).value // 1
 */
export function shift(a: Float64Array, b: Float64Array, cohorts: Cohorts, confidence: number): Comparison {
  expectConfidence('shift', confidence);
  patientsOf('shift', a, cohorts.a);
  patientsOf('shift', b, cohorts.b);
  const bare = bareComparison(cohorts, 'shift-placements');
  if (!comparable(cohorts)) return bare;
  const ascendingA = sorted(a);
  const ascendingB = sorted(b);
  const value = differenceQuantile(ascendingA, ascendingB, 0.5);
  const aligned = placements(rounded(a, value), rounded(b, 0), cohorts);
  const { variance, df } = contrastVariance(cohorts, aligned.influencesA, aligned.influencesB);
  if (!(variance > 0)) return { ...bare, value, notes: [...bare.notes, 'not-estimable:no-spread'] };
  const standardError = Math.sqrt(variance);
  const half = Math.min(0.5, tQuantile((1 + confidence) / 2, df) * standardError);
  const low = differenceQuantile(ascendingA, ascendingB, 0.5 - half);
  const high = differenceQuantile(ascendingA, ascendingB, 0.5 + half);
  return { ...bare, value, low, high, standardError, df };
}

/** Values less the shift, to 1e-9: 0.15 − 0.05 must tie with 0.10, as it does on paper. */
function rounded(values: Float64Array, less: number): Float64Array {
  return values.map((value) => Math.round((value - less) * 1e9) / 1e9);
}

/**
 * Type-7 quantile of all differences a − b of two sorted columns, without forming them.
 *
 * @param p from 0 to 1
 * @source Hyndman and Fan's type 7; bisection on two sorted columns by this project's statistics page
 * @example differenceQuantile(Float64Array.of(1, 2), Float64Array.of(0, 0), 0.5) // 1.5
 */
export function differenceQuantile(ascendingA: Float64Array, ascendingB: Float64Array, p: number): number {
  const place = (ascendingA.length * ascendingB.length - 1) * p;
  const below = Math.floor(place);
  const lower = differenceAt(ascendingA, ascendingB, below + 1);
  if (place === below) return lower;
  return lower + (place - below) * (differenceAt(ascendingA, ascendingB, below + 2) - lower);
}

/** The k-th smallest difference, k from 1: bisection between differences that occur, so that it ends on one of them. */
function differenceAt(ascendingA: Float64Array, ascendingB: Float64Array, k: number): number {
  let low = (ascendingA[0] as number) - (ascendingB.at(-1) as number);
  let high = (ascendingA.at(-1) as number) - (ascendingB[0] as number);
  while (low < high) {
    const middle = low + (high - low) / 2;
    // Between neighbouring doubles the middle rounds to one of them; the upper one would decide nothing.
    const limit = middle < high ? middle : low;
    const { count, atMost, above } = differencesUpTo(ascendingA, ascendingB, limit);
    if (count >= k) high = atMost;
    else low = above;
  }
  return low;
}

/** How many differences are at most a limit, the largest of them, and the smallest above: one walk over both columns. */
function differencesUpTo(
  ascendingA: Float64Array,
  ascendingB: Float64Array,
  limit: number,
): { count: number; atMost: number; above: number } {
  let count = 0;
  let atMost = -Infinity;
  let above = Infinity;
  // As a grows, so does the first b whose difference is at most the limit.
  let first = 0;
  for (let i = 0; i < ascendingA.length; i++) {
    const a = ascendingA[i] as number;
    while (first < ascendingB.length && a - (ascendingB[first] as number) > limit) first += 1;
    count += ascendingB.length - first;
    if (first < ascendingB.length) atMost = Math.max(atMost, a - (ascendingB[first] as number));
    if (first > 0) above = Math.min(above, a - (ascendingB[first - 1] as number));
  }
  return { count, atMost, above };
}
