import { rangeRule } from './range.js';

/** A crystalline lens that no eye has is set aside. */
export const lensThicknessRange = rangeRule('lens-thickness-range', {
  lens_thickness: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
