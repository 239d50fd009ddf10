import { integersOf } from '../columns/table.js';
import { noDay } from '../records/canonical.js';
import { tellExamRows } from './exam-rows.js';
import type { Rule } from './rule.js';

/** An examination after the day of the export cannot have been exported: its date is a slip. */
export const examAfterExport: Rule = {
  id: 'exam-after-export',
  judge(context) {
    const { tables, plan } = context;
    // Undeclared, the day of the export is that of the latest examination.
    if (plan.data_until === undefined || tables.dataUntil === noDay) return;
    const surgery = integersOf(tables.eyes, 'surgeryDay');
    tellExamRows(context, ({ eye, day }, i) => {
      const operated = surgery[eye[i] as number] as number;
      const on = day[i] as number;
      if (operated === noDay || on === noDay || operated + on <= tables.dataUntil) return undefined;
      return { rule: 'exam-after-export', severity: 'set aside', detail: operated + on - tables.dataUntil };
    });
  },
};
