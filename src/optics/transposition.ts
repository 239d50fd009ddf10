import type { Degree, Dioptre } from '../units.js';
import { shortestVector, wrap180 } from './axis.js';

/** A refraction: sphere and cylinder in dioptres, axis in (0, 180] degrees or NaN where there is none. */
export interface Spherocylinder {
  sphere: Dioptre;
  cylinder: Dioptre;
  axis: Degree;
}

/**
 * The same refraction in the other cylinder notation: (S, C, a) → (S + C, −C, a + 90).
 *
 * @returns a new refraction; its axis is NaN where the cylinder is zero or the axis was blank
 * @source definition; the lens is unchanged
 * @example transpose({ sphere: -2.25, cylinder: -1.5, axis: 20 }) // −3.75 +1.50 × 110
 */
export function transpose({ sphere, cylinder, axis }: Spherocylinder): Spherocylinder {
  return { sphere: sphere + cylinder, cylinder: 0 - cylinder, axis: axisOfCylinder(cylinder, axis + 90) };
}

/**
 * A refraction in plus-cylinder notation. The axis then names the meridian that corresponds to a steep cornea.
 *
 * @returns a new refraction with cylinder ≥ 0; its axis is NaN where the cylinder is zero or the axis was blank
 * @source definition
 * @example toPlusCylinder({ sphere: 0, cylinder: -0.75, axis: 180 }) // −0.75 +0.75 × 90
 */
export function toPlusCylinder({ sphere, cylinder, axis }: Spherocylinder): Spherocylinder {
  return {
    sphere: plusSphere(sphere, cylinder),
    cylinder: Math.abs(cylinder),
    axis: plusAxis(cylinder, axis),
  };
}

/**
 * A refraction in minus-cylinder notation.
 *
 * @returns a new refraction with cylinder ≤ 0; its axis is NaN where the cylinder is zero or the axis was blank
 * @source definition
 * @example toMinusCylinder({ sphere: -0.75, cylinder: 0.5, axis: 180 }) // −0.25 −0.50 × 90
 */
export function toMinusCylinder(refraction: Spherocylinder): Spherocylinder {
  if (refraction.cylinder > 0) return transpose(refraction);
  return { ...refraction, axis: axisOfCylinder(refraction.cylinder, refraction.axis) };
}

/**
 * Sphere of a refraction in plus-cylinder notation, one number in and out: registers loop over a million eyes.
 *
 * @param sphere    dioptres
 * @param cylinder  dioptres, either sign
 * @returns dioptres; NaN where either is NaN
 * @source definition, as `toPlusCylinder`
 * @example plusSphere(-2.25, -1.5) // −3.75
 */
export function plusSphere(sphere: Dioptre, cylinder: Dioptre): Dioptre {
  return cylinder < 0 || Number.isNaN(cylinder) ? sphere + cylinder : sphere;
}

/**
 * Axis of a refraction in plus-cylinder notation, one number out.
 *
 * @param cylinder  dioptres, either sign, as recorded
 * @param axis      degrees as recorded; NaN where blank
 * @returns degrees in (0, 180]; NaN where the cylinder is zero (below 1e-9 D) or either is NaN
 * @source definition, as `toPlusCylinder`
 * @example plusAxis(-1.5, 20) // 110
 */
export function plusAxis(cylinder: Dioptre, axis: Degree): Degree {
  return axisOfCylinder(cylinder, cylinder < 0 ? axis + 90 : axis);
}

function axisOfCylinder(cylinder: Dioptre, axis: Degree): Degree {
  return Math.abs(cylinder) >= shortestVector ? wrap180(axis) : Number.NaN;
}
