import { sphericalEquivalent } from '../optics/spherical-equivalent.js';
import { predictedBy } from '../predictions/predicted.js';
import { primaryFormula } from '../predictions/primary.js';
import { millionths } from '../units.js';
import { type Exams, examsOf, isAfter, isFit, rowsOfEye } from './exams.js';
import { examPlace } from './places.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Spherical equivalent of every refraction, and the rows of an eye after surgery that have one, by day. */
function equivalents(refractions: Exams): { se: Float64Array; rowsOf(eye: number): readonly number[] } {
  const [sphere, cylinder] = [refractions.numbers('sphere'), refractions.numbers('cylinder')];
  const se = sphere.map((value, i) => sphericalEquivalent(value, cylinder[i] as number));
  const serves = (i: number): boolean =>
    isFit(refractions, i) && isAfter(refractions, i) && !Number.isNaN(se[i] as number);
  return { se, rowsOf: (eye) => [...rowsOfEye(refractions, eye)].filter(serves) };
}

/** Two refractions of an eye after surgery that are one another with the sign turned: one of them lost it. */
export const refractionSignSlip: Rule = {
  id: 'refraction-sign-slip',
  judge(context) {
    const { tables, plan, report } = context;
    const refractions = examsOf(tables, 'refractions');
    const { se, rowsOf } = equivalents(refractions);
    const predicted = predictedBy(primaryFormula(tables.formulas, plan.predictions.primary_formula), tables);
    const [size, least] = [thresholdOf('sign_slip_size', plan), thresholdOf('sign_slip_least', plan)].map(millionths);
    const isTurned = (a: number, b: number): boolean =>
      a * b < 0 &&
      Math.min(millionths(Math.abs(a)), millionths(Math.abs(b))) >= (least as number) &&
      millionths(Math.abs(a + b)) <= (size as number);
    const placeOf = examPlace(context);
    for (let eye = 0; eye < predicted.length; eye++) {
      rowsOf(eye).forEach((later, at, rows) => {
        const earlier = rows[at - 1];
        if (earlier === undefined || !isTurned(se[earlier] as number, se[later] as number)) return;
        const from = (row: number): number => Math.abs((se[row] as number) - (predicted[eye] as number));
        // The one further from the prediction is the likelier slip; without a prediction the later.
        const [slip, other] = from(earlier) > from(later) ? [earlier, later] : [later, earlier];
        report(
          {
            rule: 'refraction-sign-slip',
            severity: 'query',
            ...placeOf(refractions, slip),
            effect: 'kept',
            detail: se[slip] as number,
            other: se[other] as number,
          },
          { table: 'refractions', row: slip, as: 'queried' },
        );
      });
    }
  },
};
