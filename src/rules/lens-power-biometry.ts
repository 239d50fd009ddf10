import { eyeNumbers } from '../eligibility/lookup.js';
import { predictedBy } from '../predictions/predicted.js';
import { primaryFormula } from '../predictions/primary.js';
import type { Dioptre, Millimetre } from '../units.js';
import { millionths } from '../units.js';
import { meanKBefore } from './keratometry-sides.js';
import { eyePlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Lens power per dioptre of intended myopia. */
const perDioptre = 1.25;

/** Lengths between which the regression misses least, millimetres. */
const ordinary = [22, 26] as const;

/**
 * Lens power for an intended refraction by the oldest regression: P = 118.9 − 2.5 L − 0.9 K, and 1.25 D more for each
 * dioptre of intended myopia. It finds what was mistyped; it plans no lens.
 *
 * @param length  axial length
 * @param k       mean keratometric power at 1.3375
 * @param target  intended spherical equivalent
 * @source SRK regression, from memory
 * @example regressionPower(23.5, 43.5, 0) // 21
 */
function regressionPower(length: Millimetre, k: Dioptre, target: Dioptre): Dioptre {
  return 118.9 - 2.5 * length - 0.9 * k - perDioptre * target;
}

/** What the eye was meant to have: its target, else what was predicted of its lens. */
function intended({ tables, plan }: RuleContext): (eye: number) => Dioptre {
  const target = eyeNumbers(tables.eyes, 'target_se');
  const predicted = predictedBy(primaryFormula(tables.formulas, plan.predictions.primary_formula), tables);
  return (eye) => {
    const aim = target?.[eye] ?? Number.NaN;
    return Number.isNaN(aim) ? (predicted[eye] as number) : aim;
  };
}

/** A lens that does not fit the eye it was put into: a power, a length or a K mistyped, or another patient's. */
export const lensPowerBiometry: Rule = {
  id: 'lens-power-biometry',
  judge(context) {
    const { tables, plan, report } = context;
    const [powers, lengths] = [eyeNumbers(tables.eyes, 'lens_power'), eyeNumbers(tables.eyes, 'axial_length')];
    if (!powers || !lengths) return;
    const [k, aimOf, place] = [meanKBefore(context), intended(context), eyePlace(context)];
    const [inside, outside] = [thresholdOf('lens_power', plan), thresholdOf('lens_power_extreme', plan)];
    powers.forEach((power, eye) => {
      const length = lengths[eye] as number;
      const expected = regressionPower(length, k[eye] as number, aimOf(eye));
      const most = length >= ordinary[0] && length <= ordinary[1] ? inside : outside;
      if (!(millionths(Math.abs(power - expected)) > millionths(most))) return;
      report(
        {
          rule: 'lens-power-biometry',
          severity: 'query',
          ...place(eye, 'lens_power'),
          effect: 'kept',
          detail: power,
          other: expected,
        },
        { table: 'eyes', row: eye, field: 'lens_power', as: 'queried' },
      );
    });
  },
};
