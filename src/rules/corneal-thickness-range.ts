import { rangeRule } from './range.js';

/** A thickness that no cornea has, as millimetres or a lost digit write it, is set aside. */
export const cornealThicknessRange = rangeRule('corneal-thickness-range', {
  cct: { table: 'thicknesses', effect: 'value left out', spoils: 'measurement' },
});
