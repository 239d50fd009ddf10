import { type Compared, isRatio } from './compared.js';
import type { Bounds } from './verdict.js';

/** A statistic on the scale of its test, where cohorts that do not differ have 0: ratios as logarithms. */
export function onScale(one: Compared, value: number): number {
  if (isRatio(one)) return Math.log(value);
  return one.by === 'effect' ? value - 0.5 : value;
}

/** The limits of a statistic on the scale of its test. */
export function boundsOnScale(one: Compared, low: number, high: number): Bounds {
  return { low: onScale(one, low), high: onScale(one, high) };
}

/**
 * A margin, or a difference of interest, on the scale of the test: of a ratio it is declared as a ratio above 1.
 *
 * @throws {RangeError} unless it is above 0, of a ratio above 1
 * @example distanceOnScale(ratioOfSds, 1.2) // ln 1.2 = 0.1823
 */
export function distanceOnScale(one: Compared, declared: number): number {
  const distance = isRatio(one) ? Math.log(declared) : declared;
  if (!(distance > 0)) {
    throw new RangeError(`distanceOnScale: ${declared} for ${one.statistic}; expected above ${isRatio(one) ? 1 : 0}`);
  }
  return distance;
}

/** A distance on the scale of the test as it is printed: of a ratio as a factor. */
export function distancePrinted(one: Compared, distance: number): number {
  return isRatio(one) ? Math.exp(distance) : distance;
}
