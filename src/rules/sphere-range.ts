import { rangeRule } from './range.js';

/** A sphere beyond what a phoropter shows is set aside with its refraction; an unusual one is asked about. */
export const sphereRange = rangeRule('sphere-range', {
  sphere: { table: 'refractions', effect: 'refraction left out', spoils: 'measurement' },
});
