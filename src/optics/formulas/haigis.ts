import { cornealRadius } from '../keratometry.js';
import type { Formula } from './formula.js';

/** 1000 (n − 1) of the cornea, n = 1.3315. From memory. */
const cornealPower = 331.5;

/** The two further constants, at their defaults: one set with a0, which must not come from a triple optimisation. */
const [perChamberDepth, perLength] = [0.4, 0.1] as const;

/**
 * Haigis: lens position = a0 + 0.4 ACD + 0.1 L. The cornea is that of the mean radius, not of the mean power.
 *
 * @source Haigis W, Lege B, Miller N, Schneider B. Graefes Arch Clin Exp Ophthalmol 2000;238:765–73; all coefficients
 * from memory until compared with the printed paper
 */
export const haigis: Formula = {
  name: 'Haigis',
  constant: 'a0',
  bracket: [-2, 5],
  needsChamberDepth: true,
  eye: ({ axialLength, k1, k2, chamberDepth }) => ({
    cornea: cornealPower / ((cornealRadius(k1) + cornealRadius(k2)) / 2),
    length: axialLength,
    base: perChamberDepth * chamberDepth + perLength * axialLength,
  }),
  shift: (constant) => constant,
  perConstant: 1,
};
