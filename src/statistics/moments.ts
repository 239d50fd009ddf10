import { mean, sampleStandardDeviation, sum } from 'simple-statistics';

/** Columns of numbers as this folder takes them: measurements, or 0 and 1. */
export type Column = Float64Array | Uint8Array;

/** The library's functions read by index only, so typed columns serve; its types know arrays alone. */
const asArray = (values: Column): readonly number[] => values as unknown as readonly number[];

/** Σ in the given order; 0 without values. @source compensated sum of Kahan and Babuška, as simple-statistics has it */
export function sumOf(values: Column): number {
  return sum(asArray(values));
}

/** Arithmetic mean of one value or more; undefined without values. */
export function meanOf(values: Column): number | undefined {
  return values.length > 0 ? mean(asArray(values)) : undefined;
}

/**
 * Standard deviation with *divisor n − 1*, in two passes; undefined below two values.
 *
 * @source definition; NIST StRD, univariate sets, in its test
 * @example standardDeviationOf(Float64Array.of(1, 2, 3, 4, 5)) // 1.5811
 */
export function standardDeviationOf(values: Column): number | undefined {
  return values.length > 1 ? sampleStandardDeviation(asArray(values)) : undefined;
}

/**
 * Excess kurtosis by moments, m₄/m₂² − 3; undefined where the values do not vary.
 *
 * @source definition (g₂, without correction for small samples)
 * @example excessKurtosis(Float64Array.of(-1, 1)) // −2, the least there is
 */
export function excessKurtosis(values: Float64Array): number | undefined {
  const centre = meanOf(values);
  if (centre === undefined) return undefined;
  let second = 0;
  let fourth = 0;
  for (let i = 0; i < values.length; i++) {
    const square = ((values[i] as number) - centre) ** 2;
    second += square;
    fourth += square * square;
  }
  return second > 0 ? (values.length * fourth) / (second * second) - 3 : undefined;
}
