import { rangeRule } from './range.js';

/** A power in which no lens is made is set aside. */
export const lensPowerRange = rangeRule('lens-power-range', {
  lens_power: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
