import { rangeRule } from './range.js';

/** A cylinder in which no lens is made, or one with a minus, is set aside. */
export const lensCylinderRange = rangeRule('lens-cylinder-range', {
  lens_cylinder: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
