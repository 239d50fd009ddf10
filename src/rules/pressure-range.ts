import { rangeRule } from './range.js';

/** A pressure that no tonometer shows is set aside. */
export const pressureRange = rangeRule('pressure-range', {
  iop: { table: 'pressures', effect: 'value left out', spoils: 'measurement' },
});
