import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import { examPlace } from './places.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** A cornea with many more cells after surgery than before: two counts exchanged, or one of the fellow eye. */
export const endotheliumRises: Rule = {
  id: 'endothelium-rises',
  judge(context) {
    const endothelia = examsOf(context.tables, 'endothelia');
    const cells = endothelia.numbers('ecd');
    const { before, outcome } = context.assembly();
    const most = 1 + thresholdOf('endothelium_rise', context.plan);
    const placeOf = examPlace(context);
    before.endothelia.forEach((first, eye) => {
      const last = outcome.endothelia[eye] as number;
      if (first < 0 || last < 0) return;
      const [was, is] = [cells[first] as number, cells[last] as number];
      if (millionths(is / was) <= millionths(most)) return;
      context.report(
        {
          rule: 'endothelium-rises',
          severity: 'query',
          ...placeOf(endothelia, last),
          effect: 'kept',
          detail: was,
          other: is,
        },
        { table: 'endothelia', row: last, as: 'queried' },
      );
    });
  },
};
