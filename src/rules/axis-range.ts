import { type Judged, rangeRule } from './range.js';

const ofRefraction: Judged = { table: 'refractions', effect: 'vector left out', spoils: 'value' };
const ofCornea: Judged = { table: 'keratometries', effect: 'value left out', spoils: 'value' };
const ofEye: Judged = { table: 'eyes', effect: 'value left out', spoils: 'measurement' };

/**
 * A number outside 0 to 180 is no axis, and one outside 0 to 360 no place on the limbus: it counts as missing. The powers beside it stand: the vector of a refraction
 * alone is left out, as where its axis is blank; the steep meridian of a cornea may still be known by the other axis.
 */
export const axisRange = rangeRule('axis-range', {
  axis: ofRefraction,
  k1_axis: ofCornea,
  k2_axis: ofCornea,
  k_steep_axis: ofCornea,
  k_cylinder_axis: ofCornea,
  lens_axis: { table: 'lensAxes', effect: 'value left out', spoils: 'measurement' },
  lens_axis_intended: ofEye,
  lens_axis_end: ofEye,
  predicted_axis: ofEye,
  total_corneal_axis: { table: 'totalCorneas', effect: 'value left out', spoils: 'value' },
  posterior_corneal_axis: { table: 'posteriorCorneas', effect: 'value left out', spoils: 'value' },
  incision_axis: ofEye,
  paracentesis_axis: ofEye,
});
