import type { Dioptre, Metre } from '../units.js';

/**
 * Sphere that corrects the eye for infinity, from a sphere found with a chart at a finite distance: S − 1/D.
 * Cylinder and axis do not change. Applied once, before vertexing, and only where the audit's policy says so.
 *
 * @param sphere        dioptres, as found with the chart
 * @param laneDistance  chart to the spectacle plane, metres
 * @returns dioptres; NaN where the distance is not positive
 * @source definition of vergence: plano found at 4 m is −0.25 D at infinity
 * @example sphereAtInfinity(-0.5, 6) // −0.667
 */
export function sphereAtInfinity(sphere: Dioptre, laneDistance: Metre): Dioptre {
  return laneDistance > 0 ? sphere - 1 / laneDistance : Number.NaN;
}
