import { rangeRule } from './range.js';

/** A width that no incision has is set aside. */
export const incisionWidthRange = rangeRule('incision-width-range', {
  incision_width: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
