import type { Better } from './compared.js';

/** What the interval of a primary outcome allows to be said; the last two of outcomes without a better direction. */
export const verdicts = [
  'better',
  'worse',
  'worse-within-margin',
  'worse-margin-not-excluded',
  'no-difference-shown',
  'equivalent',
  'non-inferior',
  'inconclusive',
  'different',
  'different-within-margin',
] as const;

export type Verdict = (typeof verdicts)[number];

/** An interval of a difference, 0 where cohorts do not differ. */
export interface Bounds {
  low: number;
  high: number;
}

/** The same difference turned so that positive favours the compared cohort. */
export function oriented({ low, high }: Bounds, better: Better): Bounds {
  return better === 'higher' ? { low, high } : { low: -high, high: -low };
}

/**
 * The verdict on a difference that has a better direction. It follows the interval and never p.
 *
 * @param bounds  of the difference, positive in favour of the compared cohort
 * @param margin  largest difference that does not matter, above 0; undefined where none is declared
 * @throws {RangeError} when the interval is turned around, or the margin not above 0
 * @source verdict table of this project's statistics page
 * @example verdictOf({ low: -0.03, high: 0.02 }, 0.05) // 'equivalent'
 */
export function verdictOf({ low, high }: Bounds, margin: number | undefined): Verdict {
  expectBounds('verdictOf', low, high, margin);
  if (low > 0) return 'better';
  if (high < 0) {
    if (margin === undefined || high <= -margin) return 'worse';
    return low > -margin ? 'worse-within-margin' : 'worse-margin-not-excluded';
  }
  if (margin === undefined) return 'no-difference-shown';
  if (low > -margin) return high < margin ? 'equivalent' : 'non-inferior';
  return 'inconclusive';
}

/**
 * The verdict on a difference without a better direction: a signed mean, a vector.
 *
 * @param excludesZero  whether the interval, or region, leaves out "no difference"
 * @param farthest      largest size of a difference inside it
 * @throws {RangeError} when the margin is not above 0
 * @example undirectedVerdict(true, 0.31, undefined) // 'different'
 */
export function undirectedVerdict(excludesZero: boolean, farthest: number, margin: number | undefined): Verdict {
  expectBounds('undirectedVerdict', -farthest, farthest, margin);
  const within = margin !== undefined && farthest < margin;
  if (excludesZero) return within ? 'different-within-margin' : 'different';
  if (margin === undefined) return 'no-difference-shown';
  return within ? 'equivalent' : 'inconclusive';
}

function expectBounds(caller: string, low: number, high: number, margin: number | undefined): void {
  if (!(low <= high)) throw new RangeError(`${caller}: from ${low} to ${high}; expected an ascending interval`);
  if (margin !== undefined && !(margin > 0)) throw new RangeError(`${caller}: margin ${margin}; expected above 0`);
}
