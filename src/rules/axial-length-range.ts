import { rangeRule } from './range.js';

/** An impossible axial length is set aside; one that is commonly measured again is noted. */
export const axialLengthRange = rangeRule('axial-length-range', {
  axial_length: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
