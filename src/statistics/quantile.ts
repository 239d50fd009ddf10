import { quantileSorted } from 'simple-statistics';
import { expectFinite, expectProbability } from './expectations.js';

/** Columns sorted so far. A column is never changed once it is made, and several statistics ask for the same order. */
const ascending = new WeakMap<Float64Array, Float64Array>();

/**
 * The values in ascending order; the given column is left as it is, and must not change afterwards.
 *
 * @throws {RangeError} at a value not finite
 */
export function sorted(values: Float64Array): Float64Array {
  const known = ascending.get(values);
  if (known) return known;
  expectFinite('sorted', values);
  const own = Float64Array.from(values).sort();
  ascending.set(values, own);
  return own;
}

/**
 * Quantile of sorted values, Hyndman & Fan *type 7*: linear between the order statistics at 1 + (n − 1)·p.
 *
 * @param ordered at least one value, sorted
 * @param p from 0 to 1
 * @throws {RangeError} without values, or with p outside 0 to 1
 * @source Hyndman RJ, Fan Y. Am Stat 1996;50:361–365, definition 7
 * @example quantile(Float64Array.of(1, 2, 3, 4), 0.25) // 1.75
 */
export function quantile(ordered: Float64Array, p: number): number {
  if (ordered.length === 0) throw new RangeError('quantile: no values; expected at least one');
  expectProbability('quantile', 'p', p);
  return quantileSorted(ordered as unknown as readonly number[], p);
}
