import type { Degree, Dioptre } from '../units.js';
import { doubledRadians } from './axis.js';

/** A cylinder below this whose axis was left blank is no astigmatism; above it, the vector is unknown. */
const negligibleCylinder: Dioptre = 0.01;

/**
 * First component of an astigmatism as a double-angle vector, x = C cos 2φ: + against the rule, − with the rule,
 * when φ is the steep meridian (cornea) or the axis of the plus cylinder (refraction).
 *
 * The sign of C makes both notations equal: −0.75 × 180 and +0.75 × 90 are one vector.
 *
 * @param cylinder  dioptres, either sign
 * @param axis      degrees; NaN where it is blank
 * @returns dioptres; 0 for a blank axis with |C| < 0.01 D, NaN for a blank axis otherwise
 * @source Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65
 * @example doubleAngleX(-0.75, 180) // −0.75
 */
export function doubleAngleX(cylinder: Dioptre, axis: Degree): Dioptre {
  if (Number.isNaN(axis)) return withoutAxis(cylinder);
  return cylinder * Math.cos(axis * doubledRadians);
}

/**
 * Second component of an astigmatism as a double-angle vector, y = C sin 2φ: + at 45°, − at 135°.
 *
 * @param cylinder  dioptres, either sign
 * @param axis      degrees; NaN where it is blank
 * @returns dioptres; 0 for a blank axis with |C| < 0.01 D, NaN for a blank axis otherwise
 * @source Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65
 * @example doubleAngleY(1, 45) // 1
 */
export function doubleAngleY(cylinder: Dioptre, axis: Degree): Dioptre {
  if (Number.isNaN(axis)) return withoutAxis(cylinder);
  return cylinder * Math.sin(axis * doubledRadians);
}

/**
 * Length of a double-angle vector: the magnitude of its astigmatism. Its axis is `axisOf`.
 *
 * @returns dioptres ≥ 0; NaN where a component is NaN
 * @source Pythagoras. Math.hypot is several times slower and guards against sizes that dioptres never reach
 * @example vectorMagnitude(3, 4) // 5
 */
export function vectorMagnitude(x: Dioptre, y: Dioptre): Dioptre {
  return Math.sqrt(x * x + y * y);
}

function withoutAxis(cylinder: Dioptre): Dioptre {
  return Math.abs(cylinder) < negligibleCylinder ? 0 : Number.NaN;
}
