import type { Biometry, FormulaName } from '../../src/optics/formulas/formula.js';
import { formulaNamed } from '../../src/optics/formulas/index.js';
import type { ConstantEyes } from '../../src/predictions/lens-constant.js';

/**
 * The ten eyes of the constant example: length, K1, K2, chamber depth, lens power, achieved equivalent. What follows
 * from them was computed in R 4.2.2 and again in Python by another method; test/optics/formula-checks.csv holds it.
 */
export const ten = [
  [21.6, 44.25, 45, 2.75, 26.5, 0.125],
  [22.35, 43.5, 44.5, 2.95, 24.5, -0.375],
  [22.9, 42.75, 43.75, 3.05, 23, 0.625],
  [23.2, 44, 44.5, 3, 21.5, -0.25],
  [23.55, 43.25, 44.25, 3.2, 21, 0],
  [23.9, 42.5, 43, 3.15, 20.5, 0.5],
  [24.4, 43.75, 45, 3.3, 17.5, -0.375],
  [25.1, 41.5, 42.25, 3.45, 18.5, -0.25],
  [26.3, 42.25, 43.5, 3.5, 13.5, 0.25],
  [27.5, 43, 44.25, 3.6, 9, 0.125],
] as const;

export function biometryOf([axialLength, k1, k2, chamberDepth]: (typeof ten)[number]): Biometry {
  return { axialLength, k1, k2, chamberDepth };
}

/** The ten eyes as a formula takes them, as many times over as wanted. */
export function tenEyes(name: FormulaName, times = 1): ConstantEyes {
  const formula = formulaNamed(name);
  const eyes = Array.from({ length: times }, () => ten).flat();
  return {
    formula,
    eyes: eyes.map((one) => formula.eye(biometryOf(one))),
    power: Float64Array.from(eyes, (one) => one[4]),
    achieved: Float64Array.from(eyes, (one) => one[5]),
  };
}
