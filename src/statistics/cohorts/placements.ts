import { meanOf } from '../moments.js';
import { patientSums } from '../patients.js';
import { sorted } from '../quantile.js';
import type { Cohorts } from './design.js';

/** θ = P(A > B) + ½P(A = B) and what each patient adds to it. */
export interface Placements {
  theta: number;
  influencesA: Float64Array;
  influencesB: Float64Array;
}

/** Mid-rank distribution function of a sorted sample at each value: (number below + ½·number equal)/n. */
function midRanks(values: Float64Array, ascending: Float64Array): Float64Array {
  const ranks = new Float64Array(values.length);
  for (let i = 0; i < ranks.length; i++) {
    const value = values[i] as number;
    ranks[i] = (countBelow(ascending, value) + countUpTo(ascending, value)) / (2 * ascending.length);
  }
  return ranks;
}

/** How many sorted values lie below a value. */
function countBelow(ascending: Float64Array, value: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ascending[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How many sorted values lie at or below a value. */
function countUpTo(ascending: Float64Array, value: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ascending[middle] as number) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The relative effect by placements: each value's mid-rank among the other cohort.
 *
 * @source Brunner E, Munzel U. Biom J 2000;42:17–25
 */
export function placements(a: Float64Array, b: Float64Array, cohorts: Cohorts): Placements {
  const ranksA = midRanks(a, sorted(b));
  const ranksB = midRanks(b, sorted(a));
  const theta = meanOf(ranksA) as number;
  const influencesA = patientSums(ranksA, cohorts.a, theta).map((sum) => sum / a.length);
  const influencesB = patientSums(ranksB, cohorts.b, meanOf(ranksB) as number).map((sum) => sum / b.length);
  return { theta, influencesA, influencesB };
}
