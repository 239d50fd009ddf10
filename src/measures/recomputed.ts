import type { FormulaName } from '../optics/formulas/formula.js';
import { formulaNamed, predictedRefraction } from '../optics/formulas/index.js';
import type { Recomputed } from '../predictions/recomputed.js';
import type { Measure } from '../records/measure.js';

const sources: Readonly<Record<FormulaName, string>> = {
  'SRK/T': 'Retzlaff, Sanders, Kraff 1990, J Cataract Refract Surg 16:333-340 and 528; coefficients from memory',
  'Holladay 1': 'Holladay et al. 1988, J Cataract Refract Surg 14:17-24; coefficients from memory',
  'Hoffer Q': 'Hoffer 1993, J Cataract Refract Surg 19:700-712; coefficients from memory',
  Haigis: 'Haigis et al. 2000, Graefes Arch Clin Exp Ophthalmol 238:765-773; coefficients from memory',
};

/** Columns that a recomputed prediction starts from, in the order of the function's arguments. */
const biometry = ['axial_length', 'flat@before', 'steep@before', 'acd@front', 'lens_power'] as const;

/**
 * The refraction that a published formula predicts for the lens implanted: a step that `trace` shows, from which the
 * formula's prediction error follows like that of a supplied prediction.
 */
export function recomputedPrediction({ label, formula }: Recomputed): Measure {
  const of = formulaNamed(formula);
  return {
    name: `predicted_se:${label}`,
    family: 'refraction',
    kind: 'continuous',
    unit: 'D',
    plane: 'spectacle',
    inputs: [...biometry, `lens_constant:${formula}`],
    formula: `${formula} for the power implanted, 12 mm; looking back only, never for choosing a lens`,
    source: sources[formula],
    groupings: 'cohorts',
    step: true,
    of: (
      axialLength = Number.NaN,
      k1 = Number.NaN,
      k2 = Number.NaN,
      chamberDepth = Number.NaN,
      power = 0,
      constant = 0,
    ) => predictedRefraction(of, { axialLength, k1, k2, chamberDepth }, constant, power),
  };
}
