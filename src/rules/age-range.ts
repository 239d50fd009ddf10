import { rangeRule } from './range.js';

/** An impossible age is set aside; a child is asked about. */
export const ageRange = rangeRule('age-range', {
  age: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
