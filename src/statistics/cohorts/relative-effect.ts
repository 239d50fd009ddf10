import { expectConfidence } from '../expectations.js';
import { patientsOf } from '../patients.js';
import { bareComparison, type Comparison, comparable, tComparison } from './contrast.js';
import type { Cohorts } from './design.js';
import { placements } from './placements.js';

/**
 * Relative effect θ = P(A > B) + ½P(A = B): the chance that an eye of A has the larger value, by placements; p of
 * θ = ½. The test of Brunner and Munzel with one eye a patient. Limits are kept within 0 and 1.
 *
 * @param a, b       values of the eyes of A and of B, in one unit
 * @param cohorts    their patients, from `recogniseDesign`
 * @param confidence such as 0.95
 * @throws {RangeError} as `meanDifference`
 * @source Brunner E, Munzel U. Biom J 2000;42:17–25; patient sums by this project's statistics page
 * @example relativeEffect(a, b, recogniseDesign(patientsA, patientsB), 0.95).value // 0.5 without a difference
 */
export function relativeEffect(a: Float64Array, b: Float64Array, cohorts: Cohorts, confidence: number): Comparison {
  expectConfidence('relativeEffect', confidence);
  patientsOf('relativeEffect', a, cohorts.a);
  patientsOf('relativeEffect', b, cohorts.b);
  const method = 'placements-patient-t';
  const bare = bareComparison(cohorts, method);
  if (!comparable(cohorts)) return bare;
  const { theta, influencesA, influencesB } = placements(a, b, cohorts);
  if (theta === 0 || theta === 1) {
    return { ...bare, value: theta, notes: [...bare.notes, 'not-estimable:complete-separation'] };
  }
  const found = tComparison(cohorts, { method, confidence, hypothesis: 0.5 }, theta, influencesA, influencesB);
  if (found.low === undefined || found.high === undefined) return found;
  return { ...found, low: Math.max(0, found.low), high: Math.min(1, found.high) };
}
