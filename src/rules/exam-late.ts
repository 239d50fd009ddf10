import { noDay } from '../records/canonical.js';
import { tellExamRows } from './exam-rows.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** An examination years after surgery is noted; one more than ten years after it is likelier a slip of the year. */
export const examLate: Rule = {
  id: 'exam-late',
  judge(context) {
    const [late, last] = [thresholdOf('late_exam', context.plan), thresholdOf('last_exam', context.plan)];
    tellExamRows(context, ({ day }, i) => {
      const on = day[i] as number;
      if (on === noDay || on <= late) return undefined;
      return { rule: 'exam-late', severity: on > last ? 'set aside' : 'note', detail: on };
    });
  },
};
