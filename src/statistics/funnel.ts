import { binomialLower, binomialProbability } from './distributions.js';
import type { Limits } from './estimate.js';

/** Least number of events with at least the probability p of so many or fewer. */
function binomialQuantile(p: number, n: number, target: number): number {
  let [low, high] = [0, n];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (binomialLower(middle, n, target) >= p) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Interpolated between two counts, so that exactly the tail lies outside. */
function limitAt(p: number, n: number, target: number): number {
  const events = binomialQuantile(p, n, target);
  const beyond = (binomialLower(events, n, target) - p) / binomialProbability(events, n, target);
  return Math.min(1, Math.max(0, (events - beyond) / n));
}

function limitsOf(target: number, n: number, level: number): Limits {
  return [limitAt((1 - level) / 2, n, target), limitAt((1 + level) / 2, n, target)];
}

/**
 * Exact binomial limits of a funnel: between them lies the share of an operator of n eyes whose true share is the
 * target, with the probability `level`. Between two whole numbers of eyes the limits are interpolated: n may be eyes
 * divided by a design effect.
 *
 * @throws {RangeError} unless n ≥ 1, 0 < target < 1 and 0 < level < 1
 * @source Spiegelhalter DJ. Stat Med 2005;24:1185–1202, appendix (formula from memory; values from R 4.2.2)
 * @example funnelLimits(0.8, 100, 0.95) // [0.7135, 0.8703]
 */
export function funnelLimits(target: number, n: number, level: number): Limits {
  const isInside = target > 0 && target < 1 && level > 0 && level < 1;
  if (!(n >= 1 && isInside)) {
    throw new RangeError(
      `funnelLimits: target ${target}, n ${n}, level ${level}; expected n of 1 or more and shares between 0 and 1`,
    );
  }
  const below = Math.floor(n);
  const [low, high] = limitsOf(target, below, level);
  if (below === n) return [low, high];
  const [nextLow, nextHigh] = limitsOf(target, below + 1, level);
  const part = n - below;
  return [low + part * (nextLow - low), high + part * (nextHigh - high)];
}
