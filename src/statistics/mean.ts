import { tQuantile } from './distributions.js';
import { type Estimate, estimate, type Limits } from './estimate.js';
import { expectConfidence, expectFinite } from './expectations.js';
import { type Column, meanOf } from './moments.js';
import { type PatientIndex, type Patients, patientSums, patientsOf, patientVariance } from './patients.js';

/**
 * Mean over eyes with its interval; both eyes of a patient count as one independent piece.
 *
 * ȳ ± t(G − 1)·√V, V = G/(G − 1)·Σu², u = Σ(y − ȳ)/n over the eyes of each of the G patients.
 *
 * @param values     one an eye, any unit
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source Liang KY, Zeger SL. Biometrika 1986;73:13–22; with one eye a patient the textbook t interval
 * @example meanInterval(Float64Array.of(1, 2, 3, 4, 5), Int32Array.of(1, 2, 3, 4, 5), 0.95) // 3 (1.037 to 4.963)
 */
export function meanInterval(values: Float64Array, patients: Patients, confidence: number): Estimate {
  expectConfidence('meanInterval', confidence);
  expectFinite('meanInterval', values);
  const index = patientsOf('meanInterval', values, patients);
  const value = meanOf(values) ?? 0;
  return estimate({ n: values.length, patients: index.count, method: 'mean-patient-t' }, value, () => {
    const half = tHalfWidth(confidence, index, meanVariance(values, value, index));
    return [value - half, value + half];
  });
}

/** V of the mean: G/(G − 1)·Σu², u = Σ(y − ȳ)/n of a patient. @throws {RangeError} below 2 patients @source as `meanInterval` */
export function meanVariance(values: Column, mean: number, patients: PatientIndex): number {
  const variance = patientVariance(patientSums(values, patients, mean));
  if (variance === undefined) throw new RangeError(`meanVariance: ${patients.count} patients; expected 2 or more`);
  return variance / values.length / values.length;
}

/** t(G − 1)·√V, two-sided. */
export function tHalfWidth(confidence: number, patients: PatientIndex, variance: number): number {
  return tQuantile((1 + confidence) / 2, patients.count - 1) * Math.sqrt(variance);
}

/** Limits of a positive quantity from the interval of its logarithm: value·exp(∓ half). @source delta method */
export function logLimits(value: number, half: number): Limits {
  return [value * Math.exp(-half), value * Math.exp(half)];
}
