import { type Estimate, estimate } from './estimate.js';
import { expectConfidence, expectFinite } from './expectations.js';
import { logLimits, meanVariance, tHalfWidth } from './mean.js';
import { median } from './median.js';
import { meanOf } from './moments.js';
import { type Patients, patientsOf } from './patients.js';

/**
 * Mean of |e| over eyes with its interval on the logarithmic scale: MAE·exp(± t(G − 1)·√V/MAE), V of the mean of |e|.
 *
 * @param values     signed errors, one an eye
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source this project's statistics page (delta method on the logarithm)
 * @example meanAbsolute(Float64Array.of(-1, 1, 2, -2, 3), Int32Array.of(1, 2, 3, 4, 5), 0.95).value // 1.8
 */
export function meanAbsolute(values: Float64Array, patients: Patients, confidence: number): Estimate {
  expectConfidence('meanAbsolute', confidence);
  expectFinite('meanAbsolute', values);
  const index = patientsOf('meanAbsolute', values, patients);
  const magnitudes = values.map(Math.abs);
  const value = meanOf(magnitudes) ?? 0;
  return estimate({ n: values.length, patients: index.count, method: 'log-patient-t' }, value, () => {
    if (value === 0) return 'not-estimable:no-spread';
    return logLimits(value, tHalfWidth(confidence, index, meanVariance(magnitudes, value, index)) / value);
  });
}

/**
 * Median of |e| over eyes, not the distance from their median; interval as that of `median`.
 *
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source as `median`
 * @example medianAbsolute(Float64Array.of(-1, 1, 2, -2, 3), Int32Array.of(1, 2, 3, 4, 5), 0.95).value // 2
 */
export function medianAbsolute(
  values: Float64Array,
  patients: Patients,
  confidence: number,
  auditIcc?: number | undefined,
): Estimate {
  return median(values.map(Math.abs), patients, confidence, auditIcc);
}
