/**
 * A toric lens seen from the cornea: thin-lens vergence of a finished operation. Nothing here plans one.
 *
 * Meridians are those of the doubled angle; the lens has its least power along its marks, which stand on the steep
 * meridian of the cornea, so that its effect is −Tc·(cos 2i, sin 2i).
 */
import type { Degree, Dioptre, Millimetre } from '../units.js';
import { axisOf, wrap90 } from './axis.js';
import { doubleAngleX, doubleAngleY, vectorMagnitude } from './double-angle.js';
import { holladay1 } from './formulas/holladay-1.js';
import { positionOf, refractionOf } from './formulas/thin-lens.js';

/** Positions outside are no lens in an eye: a wrong power, length or prediction. */
const possiblePosition = [2.5, 8] as const;

/** A direction below this has no best axis. */
const shortestDirection: Dioptre = 1e-6;

/** Cornea and retina as Holladay 1 sees them, from the mean keratometric power. */
function thinEye(axialLength: Millimetre, keratometry: Dioptre): readonly [cornea: Dioptre, length: Millimetre] {
  const biometry = { axialLength, k1: keratometry, k2: keratometry, chamberDepth: Number.NaN };
  const { cornea, length } = holladay1.eye(biometry);
  return [cornea, length];
}

/**
 * Depth at which a thin lens of the implanted power gives the refraction that was predicted for it: the eye's own
 * effective lens position, as the formula of the prediction meant it.
 *
 * @param axialLength  millimetres
 * @param keratometry  mean, dioptres at 1.3375
 * @param power        spherical equivalent of the lens, dioptres
 * @param predicted    spherical equivalent predicted for it, spectacle plane, dioptres
 * @param vertex       millimetres
 * @returns millimetres behind the cornea; NaN where none between 2.5 and 8 mm gives it
 * @source thin-lens vergence solved for the position; cornea and retina as in Holladay et al. 1988, J Cataract
 * Refract Surg 14:17–24 (*from memory*)
 * @example effectiveLensPosition(23.5, 43.5, 21, -0.0936, 12) // 5.3
 */
export function effectiveLensPosition(
  axialLength: Millimetre,
  keratometry: Dioptre,
  power: Dioptre,
  predicted: Dioptre,
  vertex: Millimetre,
): Millimetre {
  const [cornea, length] = thinEye(axialLength, keratometry);
  const position = positionOf(cornea, length, power, predicted, vertex);
  return position >= possiblePosition[0] && position <= possiblePosition[1] ? position : Number.NaN;
}

/**
 * Cylinder at the corneal plane of a toric lens in any thin eye: the difference of what its two meridians do.
 *
 * @param power     spherical equivalent of the lens, dioptres
 * @param cylinder  as labelled, lens plane, dioptres
 * @param length    cornea to retina as the formula sees it, millimetres
 * @param position  depth of the lens, millimetres
 * @param cornea    mean power as the formula sees it, dioptres
 * @returns dioptres
 * @source vergence; approach of Fam HB, Lim KL. J Cataract Refract Surg 2007;33:2072–6
 * @example toricEffect(20.5, 1.5, 23.7, 5.27, 42.963) // 1.01
 */
export function toricEffect(
  power: Dioptre,
  cylinder: Dioptre,
  length: Millimetre,
  position: Millimetre,
  cornea: Dioptre,
): Dioptre {
  const eye = { cornea, length, position };
  // Without a vertex distance the refraction stays at the cornea.
  return refractionOf(eye, power - cylinder / 2, 0) - refractionOf(eye, power + cylinder / 2, 0);
}

/**
 * Cylinder at the corneal plane of the lens in one eye, at its effective position.
 *
 * @param power        spherical equivalent of the lens, dioptres
 * @param cylinder     as labelled, lens plane, dioptres
 * @param axialLength  millimetres
 * @param keratometry  mean, dioptres at 1.3375
 * @param position     of `effectiveLensPosition`, millimetres
 * @returns dioptres
 * @source `toricEffect`, with the cornea and the retina of `effectiveLensPosition`
 * @example cylinderAtCornea(21, 3, 23.5, 43.5, 5.3) // 2.03
 */
export function cylinderAtCornea(
  power: Dioptre,
  cylinder: Dioptre,
  axialLength: Millimetre,
  keratometry: Dioptre,
  position: Millimetre,
): Dioptre {
  const [cornea, length] = thinEye(axialLength, keratometry);
  return toricEffect(power, cylinder, length, position, cornea);
}

/**
 * First component of the cylinder that a lens leaves because it does not stand where it was meant to:
 * Tc·[cos 2·intended − cos 2·observed].
 *
 * @param effect    cylinder of the lens at the corneal plane, dioptres
 * @param intended  degrees
 * @param observed  degrees, at the same visit as the refraction
 * @returns dioptres
 * @source definition; for equal cylinders it is the 2·C·sin e of Felipe et al. 2011, J Cataract Refract Surg 37
 * @example misalignmentX(2, 90, 100) // −0.12
 */
export function misalignmentX(effect: Dioptre, intended: Degree, observed: Degree): Dioptre {
  return doubleAngleX(effect, intended) - doubleAngleX(effect, observed);
}

/**
 * Second component of the same.
 *
 * @returns dioptres
 * @source as `misalignmentX`
 * @example misalignmentY(2, 90, 100) // 0.68
 */
export function misalignmentY(effect: Dioptre, intended: Degree, observed: Degree): Dioptre {
  return doubleAngleY(effect, intended) - doubleAngleY(effect, observed);
}

/**
 * Axis at which the same lens would have left the least cylinder, from what it left where it stands. For an audit,
 * looking back; no advice to turn a lens.
 *
 * @param x         achieved refraction at the corneal plane, dioptres
 * @param y         second component, dioptres
 * @param effect    cylinder of the lens at the corneal plane, dioptres
 * @param observed  axis of its marks at the same visit, degrees
 * @returns degrees; NaN where everything but the lens adds up to nothing
 * @source back-calculation: the eye without the lens is W = r + Tc·(cos 2i, sin 2i)
 * @example bestAxis(-0.5, 0, 2, 90) // 90: the lens stands where it should
 */
export function bestAxis(x: Dioptre, y: Dioptre, effect: Dioptre, observed: Degree): Degree {
  const [withoutX, withoutY] = withoutLens(x, y, effect, observed);
  return vectorMagnitude(withoutX, withoutY) >= shortestDirection ? axisOf(withoutX, withoutY) : Number.NaN;
}

/**
 * Cylinder that the lens would have left at its best axis, ||W| − Tc|.
 *
 * @returns dioptres ≥ 0; NaN where an input is NaN
 * @source as `bestAxis`
 * @example residualAtBestAxis(-0.5, 0, 2, 90) // 0.5
 */
export function residualAtBestAxis(x: Dioptre, y: Dioptre, effect: Dioptre, observed: Degree): Dioptre {
  return Math.abs(vectorMagnitude(...withoutLens(x, y, effect, observed)) - effect);
}

/** Everything but the lens: cornea, incision, error of measurement. */
function withoutLens(x: Dioptre, y: Dioptre, effect: Dioptre, observed: Degree): [Dioptre, Dioptre] {
  return [x + doubleAngleX(effect, observed), y + doubleAngleY(effect, observed)];
}

/**
 * Turn of a lens, from one axis to another: + counter-clockwise as the observer faces the patient, in both eyes.
 *
 * @returns degrees in (−90, 90]; NaN where either is NaN
 * @source definition; 175 to 5 is +10
 * @example lensTurn(175, 5) // 10
 */
export function lensTurn(from: Degree, to: Degree): Degree {
  return wrap90(to - from);
}
