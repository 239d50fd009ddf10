import { sphericalEquivalent } from '../optics/spherical-equivalent.js';
import { millionths } from '../units.js';
import { type Exams, examsOf, isFit, sameExam } from './exams.js';
import { examPlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Acuity of a chart, in logMAR; NaN where a word of low vision stands, or nothing. */
function chartAcuity(exams: Exams, i: number): number {
  return i < 0 || exams.numbers('lowVision')[i] !== 0 ? Number.NaN : (exams.numbers('logMAR')[i] as number);
}

/** A refraction and the acuities beside it. */
interface Seen {
  equivalent: number;
  cylinder: number;
  uncorrected: number;
  corrected: number;
}

/** Whether an eye that is out of focus reads without correction what only an eye in focus reads, or the reverse. */
function contradicts({ plan }: RuleContext): (of: Seen) => boolean {
  const limit = (name: Parameters<typeof thresholdOf>[0]): number => millionths(thresholdOf(name, plan));
  const [short, long, good] = [limit('short_sighted'), limit('long_sighted'), limit('uncorrected_good')];
  const [small, round, behind] = [
    limit('in_focus_equivalent'),
    limit('in_focus_cylinder'),
    limit('uncorrected_behind'),
  ];
  return ({ equivalent, cylinder, uncorrected, corrected }) => {
    const se = millionths(equivalent);
    const seesTooWell = (se <= -short || se >= long) && millionths(uncorrected) <= good;
    const isInFocus = Math.abs(se) <= small && millionths(cylinder) <= round;
    return seesTooWell || (isInFocus && millionths(uncorrected - corrected) >= behind);
  };
}

/** A refraction that the acuity without correction contradicts: a sign, a column or a row was mistaken. */
export const refractionAcuity: Rule = {
  id: 'refraction-acuity',
  judge(context) {
    const [refractions, uncorrected, corrected] = (['refractions', 'uncorrected', 'corrected'] as const).map((kind) =>
      examsOf(context.tables, kind),
    ) as [Exams, Exams, Exams];
    const [sphere, cylinder] = [refractions.numbers('sphere'), refractions.numbers('cylinder')];
    const isContradicted = contradicts(context);
    const placeOf = examPlace(context);
    for (let i = 0; i < refractions.length; i++) {
      if (!isFit(refractions, i)) continue;
      const seen: Seen = {
        equivalent: sphericalEquivalent(sphere[i] as number, cylinder[i] as number),
        cylinder: cylinder[i] as number,
        uncorrected: chartAcuity(uncorrected, sameExam(refractions, i, uncorrected)),
        corrected: chartAcuity(corrected, sameExam(refractions, i, corrected)),
      };
      if (!isContradicted(seen)) continue;
      context.report(
        {
          rule: 'refraction-acuity',
          severity: 'query',
          ...placeOf(refractions, i),
          effect: 'kept',
          detail: seen.equivalent,
          other: seen.uncorrected,
        },
        { table: 'refractions', row: i, as: 'queried' },
      );
    }
  },
};
