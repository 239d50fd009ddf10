import type { Degree } from '../../units.js';
import { type Formula, meanPower } from './formula.js';

/** The formula's tangents take degrees, of dioptres and of squared millimetres alike. */
const tangent = (degrees: Degree): number => Math.tan((degrees * Math.PI) / 180);

/** The chamber depth of an eye less the personalised one. @param length held to 18.5 to 31 mm; 23.00 is a short eye */
function depthOf(length: number, power: number): number {
  const held = Math.min(Math.max(length, 18.5), 31);
  const [sign, turn] = held <= 23 ? [1, 28] : [-1, 23.5];
  const bent = 0.1 * sign * (23.5 - held) ** 2 * tangent(0.1 * (turn - held) ** 2);
  return 0.3 * (held - 23.5) + tangent(power) ** 2 + bent - 0.99166;
}

/**
 * Hoffer Q: lens position = chamber depth + 0.05 mm; the depth follows from length, K and the personalised depth pACD.
 * The clamped length serves the depth alone; the vergence takes the length as measured.
 *
 * @source Hoffer KJ. J Cataract Refract Surg 1993;19:700–12, errata 1994;20:677 and 2007;33:2–3; all coefficients from
 * memory until compared with the printed papers
 */
export const hofferQ: Formula = {
  name: 'Hoffer Q',
  constant: 'pACD',
  bracket: [2, 9],
  needsChamberDepth: false,
  eye(biometry) {
    const power = meanPower(biometry);
    return { cornea: power, length: biometry.axialLength, base: depthOf(biometry.axialLength, power) + 0.05 };
  },
  shift: (constant) => constant,
  perConstant: 1,
};
