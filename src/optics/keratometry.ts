import type { Degree, Dioptre, Millimetre } from '../units.js';
import { doubledRadians, shortestVector, wrap180 } from './axis.js';
import { doubleAngleX, doubleAngleY } from './double-angle.js';

/** The index at which every K is held: 45.00 D for a radius of 7.50 mm. A convention, not the cornea's own index. */
export const keratometricIndex = 1.3375;

/**
 * Keratometric power of a corneal radius: K = 1000 (n − 1)/r; 337.5/r at the usual index.
 *
 * @param radius  millimetres
 * @param index   keratometric index, 1.3375 unless stated
 * @returns dioptres; NaN where the radius is not positive
 * @source definition; 7.5 mm is 45.0 D at 1.3375
 * @example keratometricPower(7.8) // 43.27
 */
export function keratometricPower(radius: Millimetre, index = keratometricIndex): Dioptre {
  return radius > 0 ? (1000 * index - 1000) / radius : Number.NaN;
}

/**
 * Corneal radius of a keratometric power: r = 1000 (n − 1)/K.
 *
 * @param power  dioptres at `index`
 * @param index  keratometric index, 1.3375 unless stated
 * @returns millimetres; NaN where the power is not positive
 * @source definition
 * @example cornealRadius(43.5) // 7.7586
 */
export function cornealRadius(power: Dioptre, index = keratometricIndex): Millimetre {
  return power > 0 ? (1000 * index - 1000) / power : Number.NaN;
}

/**
 * A keratometric power restated at another index, by way of its radius. Powers of two indices must not be subtracted.
 *
 * @param power  dioptres at the index `from`
 * @param from   index of the device
 * @param to     index wanted, 1.3375 unless stated
 * @returns dioptres; the same number where the indices are equal
 * @source definition
 * @example reindexedPower(44, 1.3375, 1.3315) // 43.22
 */
export function reindexedPower(power: Dioptre, from: number, to = keratometricIndex): Dioptre {
  return from === to ? power : (power * (1000 * to - 1000)) / (1000 * from - 1000);
}

/**
 * Meridian of the steeper of two keratometry readings, decided by value and never by column name.
 *
 * @param k1      dioptres
 * @param k1Axis  meridian of k1, degrees; NaN where blank: then it is 90° from the other
 * @param k2      dioptres
 * @param k2Axis  meridian of k2, degrees; NaN where blank
 * @returns degrees in (0, 180]; NaN where the powers are equal or both meridians are blank
 * @source definition; meridians that are not 90° apart are a finding, not repaired here
 * @example steepMeridian(44.5, 92, 43.25, 2) // 92
 */
export function steepMeridian(k1: Dioptre, k1Axis: Degree, k2: Dioptre, k2Axis: Degree): Degree {
  if (!(Math.abs(k1 - k2) >= shortestVector)) return Number.NaN;
  const own = k1 > k2 ? k1Axis : k2Axis;
  const other = k1 > k2 ? k2Axis : k1Axis;
  return wrap180(Number.isNaN(own) ? other + 90 : own);
}

/**
 * First component of the corneal astigmatism, x = (steep − flat) cos 2φ.
 *
 * @param flat       dioptres
 * @param steep      dioptres, of the same index
 * @param steepAxis  degrees; NaN where blank or where the powers are equal
 * @returns dioptres; 0 for equal powers, NaN for a blank axis otherwise
 * @source Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65
 * @example keratometricVectorX(43.25, 44.5, 92) // −1.247
 */
export function keratometricVectorX(flat: Dioptre, steep: Dioptre, steepAxis: Degree): Dioptre {
  return doubleAngleX(steep - flat, steepAxis);
}

/**
 * Second component of the corneal astigmatism, y = (steep − flat) sin 2φ.
 *
 * @param flat       dioptres
 * @param steep      dioptres, of the same index
 * @param steepAxis  degrees; NaN where blank or where the powers are equal
 * @returns dioptres; 0 for equal powers, NaN for a blank axis otherwise
 * @source Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65
 * @example keratometricVectorY(43.25, 44.5, 92) // −0.087
 */
export function keratometricVectorY(flat: Dioptre, steep: Dioptre, steepAxis: Degree): Dioptre {
  return doubleAngleY(steep - flat, steepAxis);
}

/**
 * Meridional component of an astigmatism or of its change: M cos 2(α − Φ). Negative = flattening along Φ.
 *
 * It is a change of astigmatism (Φ against Φ + 90), twice the coupled change of power along Φ.
 *
 * @param x         M cos 2α, dioptres
 * @param y         M sin 2α, dioptres
 * @param meridian  Φ, degrees: the incision's position serves as it is
 * @returns dioptres; NaN where an input is NaN
 * @source Naeser K. J Cataract Refract Surg 1997;23:76–81 (polar value)
 * @example meridionalSteepening(0.6591, -0.1042, 100) // −0.584: flattened by 0.584
 */
export function meridionalSteepening(x: Dioptre, y: Dioptre, meridian: Degree): Dioptre {
  return x * Math.cos(meridian * doubledRadians) + y * Math.sin(meridian * doubledRadians);
}

/**
 * Torque of an astigmatism or of its change about a meridian: M sin 2(α − Φ), + counter-clockwise.
 *
 * @param x         M cos 2α, dioptres
 * @param y         M sin 2α, dioptres
 * @param meridian  Φ, degrees
 * @returns dioptres; NaN where an input is NaN
 * @source Naeser K. J Cataract Refract Surg 1997;23:76–81 (polar value 45° away)
 * @example meridionalTorque(0.6591, -0.1042, 100) // 0.323
 */
export function meridionalTorque(x: Dioptre, y: Dioptre, meridian: Degree): Dioptre {
  return y * Math.cos(meridian * doubledRadians) - x * Math.sin(meridian * doubledRadians);
}

/**
 * Corneal power along any meridian: steep cos²(p − s) + flat sin²(p − s).
 *
 * @param flat       dioptres
 * @param steep      dioptres
 * @param steepAxis  s, degrees; NaN for equal powers
 * @param meridian   p, degrees
 * @returns dioptres; the common power where flat and steep are equal
 * @source Euler's theorem of normal sections
 * @example powerAlongMeridian(43.25, 44.5, 92, 47) // 43.875
 */
export function powerAlongMeridian(flat: Dioptre, steep: Dioptre, steepAxis: Degree, meridian: Degree): Dioptre {
  if (flat === steep) return flat;
  return (flat + steep) / 2 + ((steep - flat) / 2) * Math.cos((meridian - steepAxis) * doubledRadians);
}

/**
 * Power of the mean radius of two meridians, 2 K1 K2/(K1 + K2): the harmonic mean of the dioptres, a little less
 * than their arithmetic mean. Formulas that ask for the mean radius need this one.
 *
 * @returns dioptres at the index of the inputs
 * @source definition: r̄ = (r1 + r2)/2
 * @example powerOfMeanRadius(42, 46) // 43.909
 */
export function powerOfMeanRadius(k1: Dioptre, k2: Dioptre): Dioptre {
  return (2 * k1 * k2) / (k1 + k2);
}
