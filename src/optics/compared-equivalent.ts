import { type Dioptre, type Metre, type Millimetre, millionths } from '../units.js';
import { formulaVertex } from './formulas/index.js';
import { sphereAtInfinity } from './lane.js';
import { sphericalEquivalent } from './spherical-equivalent.js';
import { revertexedEquivalent } from './vertex.js';

/** Equivalents up to this are compared as they were recorded: 2 mm of vertex distance move them by less than 0.02 D. */
const farFromPlano: Dioptre = 3;

/**
 * Whether a refraction is restated before it is compared with a prediction: found at another vertex distance than that
 * of the formulas, and beyond 3 D, or wherever the audit's policy says so.
 *
 * @param vertexDistance  at which it was found, millimetres
 * @param always          1 where the policy restates every refraction
 * @source settled rule of this project
 * @example isRestated(-4, 0, 14, 0) // true
 */
export function isRestated(sphere: Dioptre, cylinder: Dioptre, vertexDistance: Millimetre, always: number): boolean {
  const far = millionths(Math.abs(sphericalEquivalent(sphere, cylinder))) > millionths(farFromPlano);
  return vertexDistance !== formulaVertex && (far || always === 1);
}

/**
 * Spherical equivalent as a prediction is compared with: as recorded, or restated for the formulas' 12 mm, each meridian
 * by itself.
 *
 * @param vertexDistance  at which the refraction was found, millimetres
 * @param always          1 where the policy restates every refraction
 * @returns dioptres in the spectacle plane
 * @source settled rule of this project; vergence
 * @example comparedEquivalent(-8, -2.5, 14, 0) // −9.08
 */
export function comparedEquivalent(
  sphere: Dioptre,
  cylinder: Dioptre,
  vertexDistance: Millimetre,
  always: number,
): Dioptre {
  return isRestated(sphere, cylinder, vertexDistance, always)
    ? revertexedEquivalent(sphere, cylinder, vertexDistance, formulaVertex)
    : sphericalEquivalent(sphere, cylinder);
}

/**
 * What the other policy on the length of the lane would add to the compared equivalent.
 *
 * @param lane        length of the lane, metres
 * @param toInfinity  1 where the sphere stands corrected to infinity, 0 where it stands as found
 * @returns dioptres; NaN where the lane is not known: then both policies are one
 * @source definition of vergence
 * @example otherLaneShift(0.5, -0.5, 12, 0, 4, 0) // −0.25
 */
export function otherLaneShift(
  sphere: Dioptre,
  cylinder: Dioptre,
  vertexDistance: Millimetre,
  always: number,
  lane: Metre,
  toInfinity: number,
): Dioptre {
  const other = toInfinity === 1 ? 2 * sphere - sphereAtInfinity(sphere, lane) : sphereAtInfinity(sphere, lane);
  return (
    comparedEquivalent(other, cylinder, vertexDistance, always) -
    comparedEquivalent(sphere, cylinder, vertexDistance, always)
  );
}

/**
 * What the other policy on the vertex distance would add to the compared equivalent.
 *
 * @param always  1 where the policy restates every refraction, 0 where it leaves those up to 3 D as recorded
 * @returns dioptres; 0 where both policies are one
 * @source vergence
 * @example otherVertexShift(-2, 0, 14, 0) // 0.008
 */
export function otherVertexShift(
  sphere: Dioptre,
  cylinder: Dioptre,
  vertexDistance: Millimetre,
  always: number,
): Dioptre {
  return (
    comparedEquivalent(sphere, cylinder, vertexDistance, 1 - always) -
    comparedEquivalent(sphere, cylinder, vertexDistance, always)
  );
}
