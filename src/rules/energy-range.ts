import { rangeRule } from './range.js';

/** An energy below nothing is set aside. */
export const energyRange = rangeRule('energy-range', {
  effective_energy: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
