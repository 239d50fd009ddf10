import { rangeRule } from './range.js';

/** A corneal diameter that no eye has is set aside. */
export const whiteToWhiteRange = rangeRule('white-to-white-range', {
  white_to_white: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
