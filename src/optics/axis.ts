import type { Degree, Dioptre } from '../units.js';

/** A vector shorter than this has no axis: what is left of one is rounding, not direction. */
export const shortestVector: Dioptre = 1e-9;

/** Degrees to radians, of an axis doubled: the unit of every double-angle formula. */
export const doubledRadians = Math.PI / 90;

/**
 * An axis or meridian brought into (0, 180]; 0 is 180. What lies there already keeps its bits. JavaScript's % keeps the
 * sign, hence both steps.
 *
 * @param angle  degrees, any number of turns
 * @returns degrees in (0, 180]; NaN for NaN
 * @source axis notation of ISO 8429, *from memory*
 * @example wrap180(-5) // 175
 */
export function wrap180(angle: Degree): Degree {
  if (angle > 0 && angle <= 180) return angle;
  const wrapped = ((angle % 180) + 180) % 180;
  return wrapped === 0 ? 180 : wrapped;
}

/**
 * A difference of two axes as the shorter turn, + counter-clockwise.
 *
 * @param difference  degrees, any size
 * @returns degrees in (−90, 90]; NaN for NaN
 * @source definition; 175 to 5 is a turn of +10
 * @example wrap90(5 - 175) // 10
 */
export function wrap90(difference: Degree): Degree {
  if (difference > -90 && difference <= 90) return difference;
  const wrapped = ((((difference + 90) % 180) + 180) % 180) - 90;
  return wrapped === -90 ? 90 : wrapped;
}

/**
 * The axis of a double-angle vector.
 *
 * @param x  C cos 2φ, dioptres
 * @param y  C sin 2φ, dioptres
 * @returns φ in (0, 180] degrees; NaN where the vector is shorter than 1e-9 D and has no axis
 * @source Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65
 * @example axisOf(0, -1) // 135
 */
export function axisOf(x: Dioptre, y: Dioptre): Degree {
  if (!(Math.sqrt(x * x + y * y) >= shortestVector)) return Number.NaN;
  return wrap180(Math.atan2(y, x) / doubledRadians);
}
