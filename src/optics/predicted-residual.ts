import type { Degree, Dioptre, Millimetre } from '../units.js';
import { doubleAngleX, doubleAngleY } from './double-angle.js';
import { cornealVectorX, cornealVectorY } from './vertex.js';

type AtCornea = (sphere: Dioptre, cylinder: Dioptre, axis: Degree, vertex: Millimetre) => Dioptre;
type AtMeridian = (cylinder: Dioptre, axis: Degree) => Dioptre;

/** One component of the predicted residual, from what one eye's plan holds. */
function component(atCornea: AtCornea, atMeridian: AtMeridian) {
  return (
    cylinder: Dioptre,
    axis: Degree,
    equivalent: Dioptre,
    vertex: Millimetre,
    before: Dioptre,
    incision: Degree,
    effect: Dioptre,
    lensCylinder: Dioptre,
  ): Dioptre => {
    if (!Number.isNaN(cylinder)) {
      if (vertex === 0) return atMeridian(cylinder, axis);
      return atCornea(equivalent - cylinder / 2, cylinder, axis, vertex);
    }
    if (lensCylinder > 0) return Number.NaN;
    return before - effect * atMeridian(1, incision);
  };
}

/**
 * First component of the residual astigmatism that was predicted, at the corneal plane.
 *
 * A recorded prediction counts. Without one, and without a toric lens, a declared effect of the incision gives it:
 * the cornea before surgery, flattened by that much along the incision. A toric lens without a prediction has none.
 *
 * @param cylinder      predicted cylinder, dioptres, with the sign of its notation; NaN where none is recorded
 * @param axis          its axis in that notation, degrees
 * @param equivalent    predicted spherical equivalent, dioptres; used only in the spectacle plane
 * @param vertex        millimetres from the cornea to the plane of the prediction: 0 at the cornea
 * @param before        first component of the corneal astigmatism before surgery, dioptres
 * @param incision      position of the incision, degrees
 * @param effect        flattening declared along the incision, dioptres; NaN where none is declared
 * @param lensCylinder  label of the lens, dioptres
 * @returns dioptres; NaN where nothing was predicted
 * @source definition; the sign of an incision is that of `meridionalSteepening`
 * @example predictedResidualX(NaN, NaN, NaN, 0, 1, 90, 0.3, 0) // 1.3: an incision at 90 adds against the rule
 */
export const predictedResidualX = component(cornealVectorX, doubleAngleX);

/**
 * Second component of the same: `before` is then the second component of the corneal astigmatism.
 *
 * @returns dioptres; NaN where nothing was predicted
 * @source as `predictedResidualX`
 * @example predictedResidualY(-0.5, 45, 0, 0, NaN, NaN, NaN, 0) // −0.5: minus cylinder at 45 is steep at 135
 */
export const predictedResidualY = component(cornealVectorY, doubleAngleY);
