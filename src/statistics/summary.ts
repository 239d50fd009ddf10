import { meanOf, standardDeviationOf, sumOf } from './moments.js';
import { quantile, sorted } from './quantile.js';

/** What a table says of one column of numbers. Quartiles are type 7, the SD has divisor n − 1. */
export interface Summary {
  n: number;
  sum: number;
  /** Undefined without values, as are the others below; the SD also with a single one. */
  mean: number | undefined;
  sd: number | undefined;
  min: number | undefined;
  q25: number | undefined;
  median: number | undefined;
  q75: number | undefined;
  max: number | undefined;
}

/**
 * Count, sum, mean, spread and quartiles of a column without missing values.
 *
 * @throws {RangeError} at a value that is not finite
 * @source quantiles: Hyndman RJ, Fan Y. Am Stat 1996;50:361–365, type 7
 * @example summary(Float64Array.of(1, 2, 3, 4)).q25 // 1.75
 */
export function summary(values: Float64Array): Summary {
  const ascending = sorted(values);
  const at = (p: number): number | undefined => (ascending.length > 0 ? quantile(ascending, p) : undefined);
  return {
    n: values.length,
    sum: sumOf(values),
    mean: meanOf(values),
    sd: standardDeviationOf(values),
    min: at(0),
    q25: at(0.25),
    median: at(0.5),
    q75: at(0.75),
    max: at(1),
  };
}
