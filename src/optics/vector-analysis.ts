/**
 * Vector analysis of an astigmatism treatment, at the corneal plane.
 *
 * All vectors are double-angle (x, y) in dioptres, of the steep meridian or the plus-cylinder axis:
 * target-induced T = target − before, surgically induced S = after − before, difference D = target − after = T − S.
 * Other authors draw the treatment 90° away; none of the quantities below changes by that.
 *
 * A target of 0.005 D or less has no direction: everything but the magnitude of error is then NaN. That is the
 * numerical floor; which targets are too small to judge is the audit's decision (below 0.25 D).
 *
 * Sources: Alpins NA. J Cataract Refract Surg 1997;23:1503–14; Alpins NA, Goggin M. Surv Ophthalmol 2004;49:109–22
 * (formulas *from memory*); the identities are checked in the test.
 */
import type { Degree, Dioptre } from '../units.js';
import { doubledRadians, shortestVector, wrap90 } from './axis.js';
import { vectorMagnitude } from './double-angle.js';

const smallestTarget: Dioptre = 0.005;

/**
 * Magnitude of error |S| − |T|: + over-corrected, − under-corrected.
 *
 * @returns dioptres; for a target of zero it is |S|
 * @example magnitudeOfError(2, 0, 1.616978, 0.321394) // −0.351
 */
export function magnitudeOfError(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): Dioptre {
  return vectorMagnitude(inducedX, inducedY) - vectorMagnitude(targetX, targetY);
}

/**
 * Angle of error: axis of S − axis of T, + counter-clockwise, in (−90, 90] degrees. The sign is that of the clock in
 * both eyes.
 *
 * @returns degrees; NaN for a target of zero, and where nothing was induced
 * @example angleOfError(2, 0, 1.616978, 0.321394) // 5.62
 */
export function angleOfError(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): Degree {
  if (isZeroTarget(targetX, targetY) || !(vectorMagnitude(inducedX, inducedY) > shortestVector)) return Number.NaN;
  const along = targetX * inducedX + targetY * inducedY;
  const across = targetX * inducedY - targetY * inducedX;
  return wrap90(Math.atan2(across, along) / doubledRadians);
}

/**
 * Correction index |S|/|T|: 1 is ideal, above 1 over-corrected. Averaged geometrically.
 *
 * @returns ratio; 0 where nothing was induced; NaN for a target of zero
 * @example correctionIndex(2, 0, 1.616978, 0.321394) // 0.824
 */
export function correctionIndex(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): number {
  if (isZeroTarget(targetX, targetY)) return Number.NaN;
  return vectorMagnitude(inducedX, inducedY) / vectorMagnitude(targetX, targetY);
}

/**
 * Index of success |D|/|T|: 0 is ideal. The divisor is the target-induced vector, not the astigmatism before.
 *
 * @returns ratio; 1 where nothing was induced; NaN for a target of zero
 * @example indexOfSuccess(2, 0, 1.616978, 0.321394) // 0.25
 */
export function indexOfSuccess(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): number {
  if (isZeroTarget(targetX, targetY)) return Number.NaN;
  return vectorMagnitude(targetX - inducedX, targetY - inducedY) / vectorMagnitude(targetX, targetY);
}

/**
 * Flattening effect: the part of S along T, |S| cos 2AE. + along the intended meridian (the opposite sign of
 * `meridionalSteepening` at the steep meridian).
 *
 * @returns dioptres; 0 where nothing was induced; NaN for a target of zero
 * @example flatteningEffect(2, 0, 1.616978, 0.321394) // 1.617
 */
export function flatteningEffect(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): Dioptre {
  if (isZeroTarget(targetX, targetY)) return Number.NaN;
  return (targetX * inducedX + targetY * inducedY) / vectorMagnitude(targetX, targetY);
}

/**
 * Flattening index: flattening effect/|T|; 1 is ideal. Unlike the correction index it is nearly unbiased for small
 * targets (Price and Clarke, J Refract Surg 2020;36(3)).
 *
 * @returns ratio; 0 where nothing was induced; NaN for a target of zero
 * @example flatteningIndex(2, 0, 1.616978, 0.321394) // 0.808
 */
export function flatteningIndex(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): number {
  return flatteningEffect(targetX, targetY, inducedX, inducedY) / vectorMagnitude(targetX, targetY);
}

/**
 * Torque: the part of S across T, |S| sin 2AE, + counter-clockwise. |S|² = flattening effect² + torque².
 *
 * @returns dioptres; 0 where nothing was induced; NaN for a target of zero
 * @example torque(2, 0, 1.616978, 0.321394) // 0.321
 */
export function torque(targetX: Dioptre, targetY: Dioptre, inducedX: Dioptre, inducedY: Dioptre): Dioptre {
  if (isZeroTarget(targetX, targetY)) return Number.NaN;
  return (targetX * inducedY - targetY * inducedX) / vectorMagnitude(targetX, targetY);
}

function isZeroTarget(x: Dioptre, y: Dioptre): boolean {
  return !(vectorMagnitude(x, y) > smallestTarget);
}
