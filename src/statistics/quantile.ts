import { quantileSorted } from 'simple-statistics';
import { expectFinite, expectProbability } from './expectations.js';

/** The values in ascending order; the given column is left as it is. @throws {RangeError} at a value not finite */
export function sorted(values: Float64Array): Float64Array {
  expectFinite('sorted', values);
  return Float64Array.from(values).sort();
}

/**
 * Quantile of sorted values, Hyndman & Fan *type 7*: linear between the order statistics at 1 + (n − 1)·p.
 *
 * @param ascending at least one value, sorted
 * @param p from 0 to 1
 * @throws {RangeError} without values, or with p outside 0 to 1
 * @source Hyndman RJ, Fan Y. Am Stat 1996;50:361–365, definition 7
 * @example quantile(Float64Array.of(1, 2, 3, 4), 0.25) // 1.75
 */
export function quantile(ascending: Float64Array, p: number): number {
  if (ascending.length === 0) throw new RangeError('quantile: no values; expected at least one');
  expectProbability('quantile', 'p', p);
  return quantileSorted(ascending as unknown as readonly number[], p);
}
