import { type Judged, rangeRule } from './range.js';

const cornea: Judged = { table: 'keratometries', effect: 'keratometry left out', spoils: 'measurement' };

/** Corneal powers after conversion to 1.3375, so that one limit serves dioptres and radii. */
export const keratometryRange = rangeRule('keratometry-range', {
  k1: cornea,
  k2: cornea,
  k_flat: cornea,
  k_steep: cornea,
  k_mean: { ...cornea, onlyImpossible: true },
});
