import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import { examPlace } from './places.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** An eye whose corrected acuity at its outcome visit is two lines worse than it was before surgery. */
export const acuityWorseAfter: Rule = {
  id: 'acuity-worse-after',
  judge(context) {
    const corrected = examsOf(context.tables, 'corrected');
    const logMAR = corrected.numbers('logMAR');
    const { before, outcome } = context.assembly();
    const limit = millionths(thresholdOf('corrected_loss', context.plan));
    const placeOf = examPlace(context);
    before.corrected.forEach((first, eye) => {
      const last = outcome.corrected[eye] as number;
      if (first < 0 || last < 0) return;
      const [was, is] = [logMAR[first] as number, logMAR[last] as number];
      if (millionths(is - was) < limit) return;
      context.report(
        {
          rule: 'acuity-worse-after',
          severity: 'query',
          ...placeOf(corrected, last),
          effect: 'kept',
          detail: was,
          other: is,
        },
        { table: 'corrected', row: last, as: 'queried' },
      );
    });
  },
};
