import { rangeRule } from './range.js';

/** A chamber that no eye has, as a lost decimal mark writes it, is set aside. */
export const chamberDepthRange = rangeRule('chamber-depth-range', {
  acd: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
