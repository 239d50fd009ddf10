import { type Estimate, type EstimateNote, estimate, type Limits } from './estimate.js';
import { expectConfidence, expectFinite } from './expectations.js';
import { intraclassCorrelation } from './icc.js';
import { jackknifeVariance, logDeviationWithout, logRootMeanSquareWithout } from './jackknife.js';
import { logLimits, tHalfWidth } from './mean.js';
import { excessKurtosis, standardDeviationOf } from './moments.js';
import { type PatientIndex, type Patients, patientsOf } from './patients.js';

/** Above this excess kurtosis the interval is marked: simulated coverage was 87–94 % where 95 % is said. */
const heavyTails = 2;

/**
 * Standard deviation over eyes (*divisor n − 1*) with its interval on the logarithmic scale.
 *
 * s·exp(± t(G − 1)·√v), v the larger of the jackknife over patients and of the normal value
 * (1 + (Σm²/n − 1)·max(0, ICC)²)/(2(n − 1)).
 *
 * @param values     one an eye, any unit
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source this project's statistics page; coverage in its simulation study
 * @example standardDeviation(Float64Array.of(1, 2, 3, 4, 5), Int32Array.of(1, 2, 3, 4, 5), 0.95).value // 1.5811
 */
export function standardDeviation(values: Float64Array, patients: Patients, confidence: number): Estimate {
  const value = standardDeviationOf(values);
  return spread('standardDeviation', values, patients, confidence, value, logDeviationWithout);
}

/**
 * Root mean square over eyes, √(Σy²/n) (*divisor n*), with its interval as that of `standardDeviation`.
 *
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source as `standardDeviation`
 * @example rootMeanSquare(Float64Array.of(3, 4, 0, 0, 0), Int32Array.of(1, 2, 3, 4, 5), 0.95).value // √5
 */
export function rootMeanSquare(values: Float64Array, patients: Patients, confidence: number): Estimate {
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += (values[i] as number) ** 2;
  const value = Math.sqrt(squares / Math.max(1, values.length));
  return spread('rootMeanSquare', values, patients, confidence, value, logRootMeanSquareWithout);
}

function spread(
  caller: string,
  values: Float64Array,
  patients: Patients,
  confidence: number,
  value: number | undefined,
  without: (values: Float64Array, patients: PatientIndex) => Float64Array | EstimateNote,
): Estimate {
  expectConfidence(caller, confidence);
  expectFinite(caller, values);
  const index = patientsOf(caller, values, patients);
  const about = { n: values.length, patients: index.count, method: 'log-jackknife-t' as const };
  if (value === undefined) return estimate(about, undefined, () => 'not-estimable:one-eye', ['not-estimable:one-eye']);
  const limits = (): Limits | EstimateNote => {
    const logs = without(values, index);
    if (typeof logs === 'string') return logs;
    const variance = Math.max(jackknifeVariance(logs), normalVariance(values, index));
    return logLimits(value, tHalfWidth(confidence, index, variance));
  };
  return estimate(about, value, limits, (excessKurtosis(values) ?? 0) > heavyTails ? ['heavy-tails'] : []);
}

/** Variance of the logarithm of an SD of normal values whose fellow eyes correlate: the floor of the jackknife. */
function normalVariance(values: Float64Array, patients: PatientIndex): number {
  const icc = Math.max(0, intraclassCorrelation(values, patients) ?? 0);
  return (1 + (patients.meanSize - 1) * icc * icc) / (2 * (values.length - 1));
}
