import type { Formula, FormulaEye } from '../optics/formulas/formula.js';
import { formulaVertex } from '../optics/formulas/index.js';
import { positionSlope, refractionOf } from '../optics/formulas/thin-lens.js';
import { meanOf } from '../statistics/moments.js';
import type { Dioptre } from '../units.js';

/** Operated eyes of one lens that a formula can be asked about. */
export interface ConstantEyes {
  formula: Formula;
  eyes: readonly FormulaEye[];
  /** Power implanted, dioptres. */
  power: Float64Array;
  /** Spherical equivalent achieved, dioptres in the spectacle plane. */
  achieved: Float64Array;
}

/** Mean error nearer to its goal than this is there, dioptres. */
const close = 1e-11;
const mostSteps = 100;

/**
 * Achieved − predicted refraction of each eye, dioptres.
 *
 * @param constant  one for all eyes, or one an eye
 */
export function errorsAt(
  { formula, eyes, power, achieved }: ConstantEyes,
  constant: number | Float64Array,
): Float64Array {
  const errors = new Float64Array(eyes.length);
  for (let i = 0; i < eyes.length; i++) {
    const { cornea, length, base } = eyes[i] as FormulaEye;
    const shift = formula.shift(typeof constant === 'number' ? constant : (constant[i] as number));
    const predicted = refractionOf({ cornea, length, position: base + shift }, power[i] as number, formulaVertex);
    errors[i] = (achieved[i] as number) - predicted;
  }
  return errors;
}

/** Change of each eye's predicted refraction for a change of 1 in the constant, dioptres. */
export function slopesAt({ formula, eyes, power, achieved }: ConstantEyes, constant: number, errors: Float64Array) {
  const shift = formula.shift(constant);
  return errors.map((error, i) => {
    const { cornea, base } = eyes[i] as FormulaEye;
    const predicted = (achieved[i] as number) - error;
    const slope = positionSlope({ cornea, position: base + shift }, power[i] as number, predicted, formulaVertex);
    return slope * formula.perConstant;
  });
}

function meanError(of: ConstantEyes, constant: number): number {
  return meanOf(errorsAt(of, constant)) as number;
}

/**
 * The constant at which the mean error of these eyes is `goal`: Newton's steps, bisection where one leaves the bracket.
 *
 * The mean error falls as the constant grows while lenses have positive powers. It is not the mean of the constants
 * that would have served each eye: long eyes with weak lenses would drag that away.
 *
 * @param goal  dioptres, 0 for the constant of the lens
 * @returns undefined where no constant of the bracket reaches the goal: the data do not determine one
 * @source Hoffer KJ et al. Am J Ophthalmol 2015;160:403–5 (requirement: zero the mean error of each formula)
 * @example constantFor(eyes, 0)
 */
export function constantFor(of: ConstantEyes, goal: Dioptre): number | undefined {
  let [low, high] = of.formula.bracket;
  if (!(meanError(of, low) > goal && meanError(of, high) < goal)) return undefined;
  let constant = (low + high) / 2;
  for (let step = 0; step < mostSteps; step++) {
    const errors = errorsAt(of, constant);
    const away = meanOf(errors) as number;
    if (Math.abs(away - goal) < close) return constant;
    if (away > goal) low = constant;
    else high = constant;
    const next = constant + (away - goal) / (meanOf(slopesAt(of, constant, errors)) as number);
    if (Math.abs(next - constant) < close) return next;
    constant = next > low && next < high ? next : (low + high) / 2;
  }
  throw new RangeError(`constantFor: ${of.formula.name} did not settle in ${mostSteps} steps`);
}
