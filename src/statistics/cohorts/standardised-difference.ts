import { expectProbability } from '../expectations.js';

/**
 * Standardised difference of a continuous baseline variable, A − B, in SDs: (mean_A − mean_B)/√((s_A² + s_B²)/2).
 *
 * @returns undefined where neither cohort varies
 * @source Austin PC. Stat Med 2009;28:3083–3107
 * @example standardisedDifference({ mean: 24, sd: 1 }, { mean: 23.5, sd: 1 }) // 0.5
 */
export function standardisedDifference(
  a: { mean: number; sd: number },
  b: { mean: number; sd: number },
): number | undefined {
  const pooled = Math.sqrt((a.sd * a.sd + b.sd * b.sd) / 2);
  return pooled > 0 ? (a.mean - b.mean) / pooled : undefined;
}

/**
 * Standardised difference of a share, A − B: (p_A − p_B)/√((p_A(1 − p_A) + p_B(1 − p_B))/2).
 *
 * @returns undefined where both shares are 0 or 1
 * @throws {RangeError} unless both shares lie from 0 to 1
 * @source Austin PC. Stat Med 2009;28:3083–3107
 * @example standardisedShareDifference(0.62, 0.48) // 0.2842
 */
export function standardisedShareDifference(shareA: number, shareB: number): number | undefined {
  expectProbability('standardisedShareDifference', 'shareA', shareA);
  expectProbability('standardisedShareDifference', 'shareB', shareB);
  const deviation = (share: number): number => Math.sqrt(share * (1 - share));
  return standardisedDifference({ mean: shareA, sd: deviation(shareA) }, { mean: shareB, sd: deviation(shareB) });
}
