import { dueEyes } from '../eligibility/membership.js';
import { type CanonicalTables, type Kind, kinds, noDay } from '../records/canonical.js';
import { examsOf, isAfter, isFit } from './exams.js';
import type { Rule } from './rule.js';

/** First and last day after surgery on which anything was measured; infinite where no such day is known. */
function daysAfter(tables: CanonicalTables): { any: boolean; first: number; last: number } {
  const found = { any: false, first: Number.POSITIVE_INFINITY, last: Number.NEGATIVE_INFINITY };
  for (const kind of Object.keys(kinds) as Kind[]) {
    const exams = examsOf(tables, kind);
    for (let i = 0; i < exams.length; i++) {
      if (!isFit(exams, i) || !isAfter(exams, i)) continue;
      found.any = true;
      const day = exams.day[i] as number;
      if (day === noDay) continue;
      found.first = Math.min(found.first, day);
      found.last = Math.max(found.last, day);
    }
  }
  return found;
}

/**
 * No eye that was due has an outcome: the export of examinations is missing, or all of them lie outside the visits of
 * audit.yaml. Operations alone may be audited, so nothing stops.
 */
export const outcomeNone: Rule = {
  id: 'outcome-none',
  judge({ tables, plan, assembly, report }) {
    const { outcomeVisit } = assembly();
    if (outcomeVisit.some((visit) => visit > 0) || !dueEyes(tables, plan).includes(1)) return;
    const { any, first, last } = daysAfter(tables);
    const [detail, other] = any ? [first, last] : [Number.NaN, Number.NaN];
    const written = plan.follow_up.outcome.join(', ');
    report({ rule: 'outcome-none', severity: 'query', written, effect: 'kept', detail, other });
  },
};
