import type { Limits } from '../estimate.js';
import { wilson } from '../share.js';

/** A share with its own limits. */
export interface ShareWithLimits {
  share: number;
  low: number;
  high: number;
}

/**
 * Square-and-add limits of the difference of two shares, A − B, that correlate by r.
 *
 * lower = d − √(δ_A² − 2r·δ_A·ε_B + ε_B²), upper = d + √(ε_A² − 2r·ε_A·δ_B + δ_B²); δ down to the lower, ε up to the
 * upper limit of each share.
 *
 * @param correlation 0 for independent samples: Newcombe's method 10 of the unpaired paper
 * @source Newcombe RG. Stat Med 1998;17:873–890; the correlation by this project's statistics page
 * @example squareAndAdd({ share: 0.8, low: 0.69, high: 0.876 }, { share: 0.6, low: 0.49, high: 0.7 }, 0) // [0.05, 0.33]
 */
export function squareAndAdd(a: ShareWithLimits, b: ShareWithLimits, correlation: number): Limits {
  const difference = a.share - b.share;
  const root = (down: number, up: number): number =>
    Math.sqrt(Math.max(0, down * down - 2 * correlation * down * up + up * up));
  const low = difference - root(a.share - a.low, b.high - b.share);
  const high = difference + root(a.high - a.share, b.share - b.low);
  return [Math.max(-1, low), Math.min(1, high)];
}

/** Counts of pairs by what their two members show. */
export interface PairedCounts {
  both: number;
  onlyA: number;
  onlyB: number;
  neither: number;
}

/**
 * Newcombe's interval of the difference of two paired shares, P(A) − P(B), with continuity-corrected φ.
 *
 * @throws {RangeError} without pairs
 * @source Newcombe RG. Improved confidence intervals for the difference between binomial proportions based on paired
 * data. Stat Med 1998;17:2635–2650, method 10
 * @example newcombePaired({ both: 59, onlyA: 6, onlyB: 16, neither: 80 }, 0.95) // [−0.1186, −0.0046]
 */
export function newcombePaired(pairs: PairedCounts, confidence: number): Limits {
  const n = pairs.both + pairs.onlyA + pairs.onlyB + pairs.neither;
  const withLimits = (count: number): ShareWithLimits => {
    const [low, high] = wilson(count, n, confidence);
    return { share: count / n, low, high };
  };
  const a = withLimits(pairs.both + pairs.onlyA);
  return squareAndAdd(a, withLimits(pairs.both + pairs.onlyB), correctedPhi(pairs));
}

/** φ with half the pairs taken off a positive numerator, not past zero; 0 where a margin is empty. */
function correctedPhi({ both, onlyA, onlyB, neither }: PairedCounts): number {
  const n = both + onlyA + onlyB + neither;
  const margins = (both + onlyA) * (onlyB + neither) * (both + onlyB) * (onlyA + neither);
  if (margins === 0) return 0;
  const product = both * neither - onlyA * onlyB;
  return (product > 0 ? Math.max(product - n / 2, 0) : product) / Math.sqrt(margins);
}
