import type { Degree, Dioptre } from '../units.js';
import { axisOf } from './axis.js';
import { doubleAngleX, doubleAngleY, vectorMagnitude } from './double-angle.js';
import { sphericalEquivalent } from './spherical-equivalent.js';
import type { Spherocylinder } from './transposition.js';

/** A refraction as three lenses: mean power, and cross cylinders at 180/90 and at 45/135. */
export interface PowerVector {
  /** Spherical equivalent, dioptres. */
  m: Dioptre;
  /** Dioptres; + corrects astigmatism with the rule. */
  j0: Dioptre;
  /** Dioptres; + corrects a plus cylinder at 135. */
  j45: Dioptre;
}

/**
 * A refraction as a power vector: M = S + C/2, J0 = −(C/2) cos 2a, J45 = −(C/2) sin 2a, the same for both notations.
 * It relates to the double-angle vector of the plus axis by J0 = −x/2, J45 = −y/2.
 *
 * @param refraction  either notation; a blank axis with |C| ≥ 0.01 D gives NaN for J0 and J45
 * @returns dioptres
 * @source Thibos LN, Horner D. J Cataract Refract Surg 2001;27:80–85 (formulas *from memory*)
 * @example powerVector({ sphere: -2, cylinder: -1, axis: 180 }) // { m: −2.5, j0: 0.5, j45: 0 }
 */
export function powerVector({ sphere, cylinder, axis }: Spherocylinder): PowerVector {
  return { m: sphericalEquivalent(sphere, cylinder), j0: j0(cylinder, axis), j45: j45(cylinder, axis) };
}

/**
 * J0 of a cylinder, one number out.
 *
 * @param cylinder  dioptres, either sign
 * @param axis      degrees; NaN where blank
 * @returns dioptres; NaN for a blank axis with |C| ≥ 0.01 D
 * @source as `powerVector`
 * @example j0(-1, 180) // 0.5
 */
export function j0(cylinder: Dioptre, axis: Degree): Dioptre {
  return 0 - doubleAngleX(cylinder, axis) / 2;
}

/**
 * J45 of a cylinder, one number out.
 *
 * @param cylinder  dioptres, either sign
 * @param axis      degrees; NaN where blank
 * @returns dioptres; NaN for a blank axis with |C| ≥ 0.01 D
 * @source as `powerVector`
 * @example j45(-2, 45) // 1
 */
export function j45(cylinder: Dioptre, axis: Degree): Dioptre {
  return 0 - doubleAngleY(cylinder, axis) / 2;
}

/**
 * A power vector as a refraction in minus-cylinder notation: C = −2√(J0² + J45²), S = M − C/2.
 *
 * @returns a refraction; its axis is NaN where the cylinder is zero
 * @source Thibos LN, Horner D. J Cataract Refract Surg 2001;27:80–85 (formulas *from memory*)
 * @example fromPowerVector({ m: -2.5, j0: 0.5, j45: 0 }) // −2.00 −1.00 × 180
 */
export function fromPowerVector(vector: PowerVector): Spherocylinder {
  const half = vectorMagnitude(vector.j0, vector.j45);
  return { sphere: vector.m + half, cylinder: 0 - 2 * half, axis: axisOf(vector.j0, vector.j45) };
}
