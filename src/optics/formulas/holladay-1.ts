import { cornealRadius } from '../keratometry.js';
import { type Formula, meanPower } from './formula.js';

/** 1000 (n − 1) of the cornea, n = 4/3. From memory. */
const cornealPower = 1000 / 3;

/**
 * Holladay 1: lens position = anatomic chamber depth + surgeon factor. The depth is taken with a radius of 7 mm at the
 * least and a corneal diameter of 13.5 mm at the most; the vergence with the radius as measured.
 *
 * @source Holladay JT et al. J Cataract Refract Surg 1988;14:17–24; all coefficients from memory until compared with
 * the printed paper
 */
export const holladay1: Formula = {
  name: 'Holladay 1',
  constant: 'SF',
  bracket: [-1, 5],
  needsChamberDepth: false,
  eye(biometry) {
    const radius = cornealRadius(meanPower(biometry));
    const limited = Math.max(radius, 7);
    const diameter = Math.min((12.5 * biometry.axialLength) / 23.45, 13.5);
    return {
      cornea: cornealPower / radius,
      length: biometry.axialLength + 0.2,
      base: 0.56 + limited - Math.sqrt(limited ** 2 - diameter ** 2 / 4),
    };
  },
  shift: (constant) => constant,
  perConstant: 1,
};
