import { tQuantile, tTwoSided } from '../distributions.js';
import { type Estimate, type EstimateMethod, type EstimateNote, fewestPatients, patientNotes } from '../estimate.js';
import type { Cohorts, Stratum } from './design.js';

/** A comparison of cohort A with cohort B; differences are A − B, ratios A/B. */
export interface Comparison extends Estimate {
  /** Two-sided; undefined where there is no test. */
  p: number | undefined;
  /** √V, on the scale of the test: of the logarithm for ratios. */
  standardError: number | undefined;
  /** Degrees of freedom f. */
  df: number | undefined;
}

/**
 * w = k_A·a − k_B·b of each patient, by joint number, with k = √(G/(G − 1)) of its cohort.
 *
 * @param a influences of A summed over each patient's eyes, by patient of A
 * @param b likewise for B
 * @source this project's statistics page; the factor of `patientVariance`, each cohort its own
 */
export function patientContrasts(cohorts: Cohorts, a: Float64Array, b: Float64Array): Float64Array {
  const kA = Math.sqrt(a.length / (a.length - 1));
  const kB = Math.sqrt(b.length / (b.length - 1));
  const w = new Float64Array(cohorts.patients);
  for (let g = 0; g < a.length; g++) w[cohorts.jointOfA[g] as number] = kA * (a[g] as number);
  for (let g = 0; g < b.length; g++) {
    const joint = cohorts.jointOfB[g] as number;
    w[joint] = (w[joint] as number) - kB * (b[g] as number);
  }
  return w;
}

/**
 * Degrees of freedom of each stratum: G₁(1 − 1/G_A), G₂(1 − 1/G_B), G₃(1 − 1/(2G_A) − 1/(2G_B)).
 *
 * @source this project's statistics page; G − 1 where all patients are of one stratum
 */
export function strataDegrees({ a, b, sizes }: Cohorts): [onlyA: number, onlyB: number, both: number] {
  const lossA = 1 / a.count;
  const lossB = 1 / b.count;
  return [sizes[0] * (1 - lossA), sizes[1] * (1 - lossB), sizes[2] * (1 - lossA / 2 - lossB / 2)];
}

/**
 * V = Σw² and its degrees of freedom f = V²/Σ(V_s²/f_s) over the strata of patients only in A, only in B, in both.
 * One eye a patient gives Welch's degrees, one eye in each cohort those of the paired t.
 *
 * @source this project's statistics page; Satterthwaite FE. Biometrics 1946;2:110–114
 */
export function contrastVariance(cohorts: Cohorts, a: Float64Array, b: Float64Array): { variance: number; df: number } {
  const w = patientContrasts(cohorts, a, b);
  const parts = [0, 0, 0] as [number, number, number];
  for (let g = 0; g < w.length; g++) parts[cohorts.strata[g] as Stratum] += (w[g] as number) ** 2;
  const variance = parts[0] + parts[1] + parts[2];
  const degrees = strataDegrees(cohorts);
  let spent = 0;
  for (const s of [0, 1, 2] as const) if (cohorts.sizes[s] > 0) spent += parts[s] ** 2 / degrees[s];
  return { variance, df: variance ** 2 / spent };
}

/** Eyes, patients and marks of a comparison, before anything is estimated. */
export function bareComparison(cohorts: Cohorts, method: EstimateMethod): Comparison & { notes: EstimateNote[] } {
  const fewest = Math.min(cohorts.a.count, cohorts.b.count);
  return {
    value: undefined,
    low: undefined,
    high: undefined,
    p: undefined,
    standardError: undefined,
    df: undefined,
    n: cohorts.a.eyes + cohorts.b.eyes,
    patients: cohorts.patients,
    method,
    notes: [`design:${cohorts.design}`, ...patientNotes(fewest)],
  };
}

/** Whether both cohorts have the 5 patients below which only counts are given. */
export function comparable({ a, b }: Cohorts): boolean {
  return Math.min(a.count, b.count) >= fewestPatients;
}

/**
 * A comparison on the scale of its t test: interval value ± t(f)·√V, p of (value − hypothesis)/√V.
 *
 * @param a, b       influences summed over each patient's eyes, in A and in B
 * @param hypothesis value without a difference: 0, or ½ for the relative effect
 * @param scale      how value and limits are printed; the exponential for ratios
 */
export function tComparison(
  cohorts: Cohorts,
  about: { method: EstimateMethod; confidence: number; hypothesis?: number; scale?: (value: number) => number },
  value: number,
  a: Float64Array,
  b: Float64Array,
): Comparison {
  const { method, confidence, hypothesis = 0, scale = (same) => same } = about;
  const bare = bareComparison(cohorts, method);
  const { variance, df } = contrastVariance(cohorts, a, b);
  if (!(variance > 0)) return { ...bare, value: scale(value), notes: [...bare.notes, 'not-estimable:no-spread'] };
  const standardError = Math.sqrt(variance);
  const half = tQuantile((1 + confidence) / 2, df) * standardError;
  const p = tTwoSided((value - hypothesis) / standardError, df);
  return { ...bare, value: scale(value), low: scale(value - half), high: scale(value + half), p, standardError, df };
}
