import { rangeRule } from './range.js';

/** An impossible cylinder is set aside with its refraction; an unusual one is asked about. Either sign is judged alike. */
export const cylinderRange = rangeRule('cylinder-range', {
  cylinder: { table: 'refractions', effect: 'refraction left out', spoils: 'measurement' },
});
