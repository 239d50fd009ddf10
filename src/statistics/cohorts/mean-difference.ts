import type { EstimateNote } from '../estimate.js';
import { expectConfidence, expectFinite } from '../expectations.js';
import { type Column, meanOf } from '../moments.js';
import { type PatientIndex, patientSums, patientsOf } from '../patients.js';
import { bareComparison, type Comparison, comparable, tComparison } from './contrast.js';
import { type Cohorts, oneEyeEach } from './design.js';

/**
 * Difference of the means over eyes, A − B. Welch's t with one eye a patient, the paired t with one eye in each cohort.
 *
 * @param a, b       values of the eyes of A and of B, in one unit
 * @param cohorts    their patients, from `recogniseDesign`
 * @param confidence such as 0.95
 * @throws {RangeError} at a value not finite, columns that are not parallel to their patients, or a bad confidence
 * @source this project's statistics page, comparing cohorts
 * @example meanDifference(a, b, recogniseDesign(patientsA, patientsB), 0.95).value // mean of A − mean of B
 */
export function meanDifference(a: Column, b: Column, cohorts: Cohorts, confidence: number): Comparison {
  expectConfidence('meanDifference', confidence);
  expectFinite('meanDifference', a);
  expectFinite('meanDifference', b);
  patientsOf('meanDifference', a, cohorts.a);
  patientsOf('meanDifference', b, cohorts.b);
  const method = 'difference-patient-t';
  if (!comparable(cohorts)) return bareComparison(cohorts, method);
  const difference = (meanOf(a) as number) - (meanOf(b) as number);
  const influencesA = meanInfluences(a, cohorts.a);
  const found = tComparison(cohorts, { method, confidence }, difference, influencesA, meanInfluences(b, cohorts.b));
  const textbook = textbookOf(cohorts);
  return textbook ? { ...found, notes: [...found.notes, textbook] } : found;
}

/** The textbook form that the difference is identical with, where each patient has one eye in a cohort. */
function textbookOf(cohorts: Cohorts): EstimateNote | undefined {
  if (cohorts.design === 'fellow-eye') return 'textbook:paired-t';
  return oneEyeEach(cohorts) ? 'textbook:welch' : undefined;
}

/** Σ(y − ȳ)/n over the eyes of each patient: what each adds to the mean. */
export function meanInfluences(values: Column, patients: PatientIndex): Float64Array {
  return patientSums(values, patients, meanOf(values) as number).map((sum) => sum / values.length);
}
