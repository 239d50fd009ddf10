import { rangeRule } from './range.js';

/** An acuity that no chart gives, in logMAR whatever it was written in, is set aside. */
export const acuityRange = rangeRule('acuity-range', {
  udva: { table: 'uncorrected', effect: 'acuity left out', spoils: 'measurement' },
  cdva: { table: 'corrected', effect: 'acuity left out', spoils: 'measurement' },
  unva: { table: 'near', effect: 'acuity left out', spoils: 'measurement' },
  uiva: { table: 'intermediate', effect: 'acuity left out', spoils: 'measurement' },
});
