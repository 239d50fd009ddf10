import { noDay } from '../records/canonical.js';
import { belongsTo, labelledBefore, visitRules } from '../visits/visit-rule.js';
import { tellExamRows } from './exam-rows.js';
import type { Rule } from './rule.js';

/**
 * An examination whose date and label contradict each other: dated before surgery and labelled after it, the reverse,
 * or dated inside the window of another visit.
 */
export const examLabel: Rule = {
  id: 'exam-label',
  tells: ['exam-before-surgery', 'exam-label'],
  judge(context) {
    const { plan } = context;
    const visits = visitRules(plan);
    // Where labels win, the date is still the one that puts a row elsewhere.
    const byDate = { ...plan, follow_up: { ...plan.follow_up, visit_by: 'date' as const } };
    tellExamRows(context, ({ day, label }, i) => {
      const [on, named] = [day[i] as number, label[i] as number];
      if (on === noDay || named === 0) return undefined;
      if (named > 0 && on < 0) return { rule: 'exam-before-surgery', severity: 'query', detail: on };
      if (named === labelledBefore) return on > 0 ? { rule: 'exam-label', severity: 'query', detail: on } : undefined;
      const own = visits.find(({ index }) => index === named);
      const dated = visits.find((visit) => !visit.byLabelOnly && belongsTo(visit, on, 0, byDate));
      if (!own || own.byLabelOnly || !dated || dated === own) return undefined;
      return { rule: 'exam-label', severity: 'query', detail: on };
    });
  },
};
