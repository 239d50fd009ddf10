import type { Dioptre } from '../units.js';

/**
 * Spherical equivalent: the mean power of all meridians, S + C/2, in the plane of its inputs.
 *
 * @param sphere    dioptres
 * @param cylinder  dioptres, either sign, with the sphere of the same notation
 * @returns dioptres; NaN where either is NaN. The axis is not needed
 * @source M of Thibos LN, Horner D. J Cataract Refract Surg 2001;27:80–85
 * @example sphericalEquivalent(-2.25, -1.5) // −3
 */
export function sphericalEquivalent(sphere: Dioptre, cylinder: Dioptre): Dioptre {
  return sphere + cylinder / 2;
}
