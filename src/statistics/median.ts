import { tQuantile } from './distributions.js';
import { type Estimate, estimate } from './estimate.js';
import { expectConfidence } from './expectations.js';
import { shareDesign } from './icc.js';
import { type Patients, patientsOf } from './patients.js';
import { quantile, sorted } from './quantile.js';
import { scoreLimits } from './share.js';

/**
 * Median over eyes with its interval: the type-7 quantiles at Wilson's limits of the share one half, at the eyes
 * divided by the design effect of "at or below the median", with t(G − 1) in place of z.
 *
 * @param values     one an eye, any unit
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95
 * @param auditIcc   correlation of fellow eyes in "at or below the median" over the whole audit
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source this project's statistics page; coverage in its simulation study
 * @example median(Float64Array.of(1, 2, 3, 4, 9), Int32Array.of(1, 2, 3, 4, 5), 0.95).value // 3
 */
export function median(
  values: Float64Array,
  patients: Patients,
  confidence: number,
  auditIcc?: number | undefined,
): Estimate {
  expectConfidence('median', confidence);
  const ascending = sorted(values);
  const index = patientsOf('median', values, patients);
  const about = { n: values.length, patients: index.count, method: 'rank-effective-n' as const };
  if (values.length === 0) return estimate(about, undefined, () => 'not-estimable:no-eyes');
  const value = quantile(ascending, 0.5);
  const { designEffect, notes } = shareDesign(atOrBelow(values, value), index, auditIcc);
  const limits = (): [number, number] => {
    const n = values.length / designEffect;
    const [low, high] = scoreLimits(n / 2, n, tQuantile((1 + confidence) / 2, index.count - 1));
    return [quantile(ascending, low), quantile(ascending, high)];
  };
  return estimate(about, value, limits, notes);
}

/** 1 where a value is at or below the limit: the variable whose correlation serves the median. */
export function atOrBelow(values: Float64Array, limit: number): Uint8Array {
  const hits = new Uint8Array(values.length);
  for (let i = 0; i < hits.length; i++) hits[i] = (values[i] as number) <= limit ? 1 : 0;
  return hits;
}
