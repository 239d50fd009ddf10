import type { EstimateNote } from '../estimate.js';
import { expectConfidence, expectFinite } from '../expectations.js';
import { logDeviationWithout } from '../jackknife.js';
import { meanOf, standardDeviationOf } from '../moments.js';
import { type PatientIndex, patientsOf } from '../patients.js';
import { bareComparison, type Comparison, comparable, tComparison } from './contrast.js';
import type { Cohorts } from './design.js';

/**
 * Ratio of the SDs over eyes, A/B: the logarithm by the jackknife over patients of each cohort, t with f degrees.
 *
 * @param a, b       values of the eyes of A and of B, in one unit
 * @param cohorts    their patients, from `recogniseDesign`
 * @param confidence such as 0.95
 * @throws {RangeError} as `meanDifference`
 * @source this project's statistics page, comparing cohorts
 * @example spreadRatio(a, b, recogniseDesign(patientsA, patientsB), 0.95).value // SD of A / SD of B
 */
export function spreadRatio(a: Float64Array, b: Float64Array, cohorts: Cohorts, confidence: number): Comparison {
  expectConfidence('spreadRatio', confidence);
  expectFinite('spreadRatio', a);
  expectFinite('spreadRatio', b);
  patientsOf('spreadRatio', a, cohorts.a);
  patientsOf('spreadRatio', b, cohorts.b);
  const method = 'ratio-jackknife-t';
  const bare = bareComparison(cohorts, method);
  if (!comparable(cohorts)) return bare;
  const influencesA = spreadInfluences(a, cohorts.a);
  const influencesB = spreadInfluences(b, cohorts.b);
  const reason = [influencesA, influencesB].find((found) => typeof found === 'string');
  if (typeof influencesA === 'string' || typeof influencesB === 'string') {
    return { ...bare, notes: [...bare.notes, reason as EstimateNote] };
  }
  const log = Math.log((standardDeviationOf(a) as number) / (standardDeviationOf(b) as number));
  return tComparison(cohorts, { method, confidence, scale: Math.exp }, log, influencesA, influencesB);
}

/** (G − 1)/G·(mean l − l without the patient): what each patient adds to the logarithm of the SD. */
function spreadInfluences(values: Float64Array, patients: PatientIndex): Float64Array | EstimateNote {
  const logs = logDeviationWithout(values, patients);
  if (typeof logs === 'string') return logs;
  const centre = meanOf(logs) as number;
  return logs.map((log) => ((patients.count - 1) / patients.count) * (centre - log));
}
