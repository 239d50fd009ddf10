import type { Degree, Dioptre, Millimetre } from '../units.js';
import { doubleAngleX, doubleAngleY } from './double-angle.js';
import { sphericalEquivalent } from './spherical-equivalent.js';

/**
 * Power at the corneal plane of a spectacle lens, along one meridian: Fc = F / (1 − d·F), d in metres.
 *
 * A cylinder is converted through its two principal meridians; sphere, cylinder and spherical equivalent must not
 * be converted as they stand.
 *
 * @param power           power at the spectacle plane, dioptres
 * @param vertexDistance  back of the lens to the cornea, millimetres; the caller states it, 12 is not assumed
 * @returns dioptres, not rounded; NaN where 1 − d·F is not positive: such a lens focuses at or before the cornea
 * @source definition of vergence; worked by hand in test/optics/vertex.test.ts
 * @example cornealPlanePower(-10, 12) // −8.93
 */
export function cornealPlanePower(power: Dioptre, vertexDistance: Millimetre): Dioptre {
  const divisor = 1 - (vertexDistance / 1000) * power;
  return divisor > 0 ? power / divisor : Number.NaN;
}

/**
 * Power of the spectacle lens that has this power at the corneal plane, along one meridian: F = Fc / (1 + d·Fc).
 *
 * @param power           power at the corneal plane, dioptres
 * @param vertexDistance  back of the lens to the cornea, millimetres
 * @returns dioptres, not rounded; NaN where 1 + d·Fc is not positive: no spectacle lens there corrects such an eye
 * @source definition of vergence
 * @example spectaclePlanePower(-8.928571, 12) // −10.00
 */
export function spectaclePlanePower(power: Dioptre, vertexDistance: Millimetre): Dioptre {
  const divisor = 1 + (vertexDistance / 1000) * power;
  return divisor > 0 ? power / divisor : Number.NaN;
}

/**
 * Power of a spectacle lens restated for another vertex distance, along one meridian, by way of the cornea.
 *
 * @param power  dioptres at the distance `from`
 * @param from   millimetres at which it was found
 * @param to     millimetres for which it is wanted
 * @returns dioptres; the same number where the distances are equal; NaN where it does not exist
 * @source definition of vergence
 * @example revertexedPower(-8, 14, 12) // −7.87
 */
export function revertexedPower(power: Dioptre, from: Millimetre, to: Millimetre): Dioptre {
  return from === to ? power : spectaclePlanePower(cornealPlanePower(power, from), to);
}

/**
 * Spherical equivalent restated for another vertex distance: both meridians are moved, then averaged.
 *
 * @param sphere    dioptres
 * @param cylinder  dioptres, either sign
 * @param from      millimetres at which they were found
 * @param to        millimetres for which the equivalent is wanted
 * @returns dioptres in the spectacle plane at `to`; NaN where a meridian cannot be moved
 * @source definition of vergence
 * @example revertexedEquivalent(-8, -2.5, 14, 12) // −9.08
 */
export function revertexedEquivalent(sphere: Dioptre, cylinder: Dioptre, from: Millimetre, to: Millimetre): Dioptre {
  if (from === to) return sphericalEquivalent(sphere, cylinder);
  return (revertexedPower(sphere, from, to) + revertexedPower(sphere + cylinder, from, to)) / 2;
}

/**
 * Spherical equivalent at the corneal plane: the mean of both meridians after each was moved.
 *
 * @param sphere          dioptres at the spectacle plane
 * @param cylinder        dioptres at the spectacle plane, either sign
 * @param vertexDistance  millimetres
 * @returns dioptres; NaN where a meridian cannot be moved
 * @source Holladay JT, Moran JR, Kezirian GM. J Cataract Refract Surg 2001;27:61–79 (requirement); vergence
 * @example cornealEquivalent(-8, -2.5, 12) // −8.3122, not the −8.3258 of the equivalent moved as one number
 */
export function cornealEquivalent(sphere: Dioptre, cylinder: Dioptre, vertexDistance: Millimetre): Dioptre {
  return (cornealPlanePower(sphere, vertexDistance) + cornealPlanePower(sphere + cylinder, vertexDistance)) / 2;
}

/**
 * Cylinder of a spectacle refraction at the corneal plane: the difference of its two meridians after each was moved.
 * The axis is the same in both planes.
 *
 * @param sphere          dioptres at the spectacle plane
 * @param cylinder        dioptres at the spectacle plane, either sign
 * @param vertexDistance  millimetres
 * @returns dioptres, with the sign of `cylinder`; NaN where a meridian cannot be moved
 * @source Holladay JT, Moran JR, Kezirian GM. J Cataract Refract Surg 2001;27:61–79 (requirement); vergence
 * @example cornealCylinder(-5, -3, 12) // −2.58
 */
export function cornealCylinder(sphere: Dioptre, cylinder: Dioptre, vertexDistance: Millimetre): Dioptre {
  return cornealPlanePower(sphere + cylinder, vertexDistance) - cornealPlanePower(sphere, vertexDistance);
}

/**
 * First component of a refraction's astigmatism at the corneal plane, x = C cos 2φ.
 *
 * @param sphere          dioptres at the spectacle plane
 * @param cylinder        dioptres at the spectacle plane, either sign
 * @param axis            degrees; NaN where blank
 * @param vertexDistance  millimetres
 * @returns dioptres; for a blank axis the recorded cylinder decides: 0 where |C| < 0.01 D, else NaN
 * @source `cornealCylinder` and `doubleAngleX`
 * @example cornealVectorX(-5, -3, 180, 12) // −2.58
 */
export function cornealVectorX(sphere: Dioptre, cylinder: Dioptre, axis: Degree, vertexDistance: Millimetre): Dioptre {
  return doubleAngleX(Number.isNaN(axis) ? cylinder : cornealCylinder(sphere, cylinder, vertexDistance), axis);
}

/**
 * Second component of a refraction's astigmatism at the corneal plane, y = C sin 2φ.
 *
 * @param sphere          dioptres at the spectacle plane
 * @param cylinder        dioptres at the spectacle plane, either sign
 * @param axis            degrees; NaN where blank
 * @param vertexDistance  millimetres
 * @returns dioptres; for a blank axis the recorded cylinder decides: 0 where |C| < 0.01 D, else NaN
 * @source `cornealCylinder` and `doubleAngleY`
 * @example cornealVectorY(-5, -3, 135, 12) // 2.58
 */
export function cornealVectorY(sphere: Dioptre, cylinder: Dioptre, axis: Degree, vertexDistance: Millimetre): Dioptre {
  return doubleAngleY(Number.isNaN(axis) ? cylinder : cornealCylinder(sphere, cylinder, vertexDistance), axis);
}
