import { rangeRule } from './range.js';

/** A count of cells that no cornea has is set aside. */
export const endotheliumRange = rangeRule('endothelium-range', {
  ecd: { table: 'endothelia', effect: 'value left out', spoils: 'measurement' },
});
