import { cornealRadius } from '../keratometry.js';
import { type Biometry, type Formula, meanPower } from './formula.js';

/** 1000 (n − 1) of the cornea, n = 1.333. From memory. */
const cornealPower = 333;

/** Axial length above which it is corrected, millimetres. From memory. */
const longEye = 24.2;

/** Below this, mm², the corneal height runs to its cusp: the lens position is not to be relied on. Judgement. */
const unreliableBelow = 2;

/**
 * Axial length as corrected for long eyes. 1.716 is nearly continuous at 24.2 mm, the 1.715 also printed is not.
 *
 * @source Retzlaff, Sanders, Kraff. J Cataract Refract Surg 1990;16:333–40, erratum 528; coefficients from memory
 */
function correctedLength(length: number): number {
  return length > longEye ? -3.446 + 1.716 * length - 0.0237 * length ** 2 : length;
}

/** Computed corneal width, millimetres. Coefficients from memory. */
function cornealWidth(biometry: Biometry): number {
  return -5.41 + 0.58412 * correctedLength(biometry.axialLength) + 0.098 * meanPower(biometry);
}

/**
 * What stands under the root of the corneal height, r² − Cw²/4, mm². Steep and long eyes bring it towards 0, where the
 * height shoots up, and below, where it does not exist.
 *
 * @example heightRadicand({ axialLength: 27, k1: 48, k2: 48, chamberDepth: Number.NaN }) // −1.3453
 */
export function heightRadicand(biometry: Biometry): number {
  return cornealRadius(meanPower(biometry)) ** 2 - cornealWidth(biometry) ** 2 / 4;
}

/** Whether the eye lies so near the cusp, or beyond it, that the formula's lens position cannot be relied on. */
export function isPositionUnreliable(biometry: Biometry): boolean {
  return heightRadicand(biometry) < unreliableBelow;
}

/**
 * SRK/T: lens position = corneal height + (0.62467 A − 68.747) − 3.336. A radicand below 0 counts as 0; the eye is
 * marked by `isPositionUnreliable`.
 *
 * @source Retzlaff JA, Sanders DR, Kraff MC. J Cataract Refract Surg 1990;16:333–40, erratum 1990;16:528; all
 * coefficients from memory until compared with the printed paper
 */
export const srkT: Formula = {
  name: 'SRK/T',
  constant: 'A',
  bracket: [112, 125],
  needsChamberDepth: false,
  eye(biometry) {
    const radius = cornealRadius(meanPower(biometry));
    const { axialLength } = biometry;
    return {
      cornea: cornealPower / radius,
      length: axialLength + 0.65696 - 0.02029 * axialLength,
      base: radius - Math.sqrt(Math.max(0, heightRadicand(biometry))),
    };
  },
  shift: (constant) => 0.62467 * constant - 68.747 - 3.336,
  perConstant: 0.62467,
};
