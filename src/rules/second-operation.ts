import { integersOf } from '../columns/table.js';
import { noDay } from '../records/canonical.js';
import { cellFinder } from './places.js';
import type { Rule } from './rule.js';

/**
 * A later operation on an eye of the audit, or a second lens row of another day. By the audit's own rule its
 * examinations from then on are left out, or kept.
 */
export const secondOperation: Rule = {
  id: 'second-operation',
  judge(context) {
    const { tables, plan, report } = context;
    const { events } = tables;
    const [eye, day, source, block, row] = ['eye', 'day', 'source', 'block', 'row'].map((name) => {
      return integersOf(events, name);
    }) as [Int32Array, Int32Array, Int32Array, Int32Array, Int32Array];
    const procedure = events.column('procedure') as { at(row: number): string };
    const cellOf = cellFinder(context);
    const leavesOut = plan.follow_up.after_second_operation === 'leave-out';
    for (let i = 0; i < eye.length; i++) {
      const on = day[i] as number;
      const at = { source: source[i] as number, block: block[i] as number, row: row[i] as number };
      const ends = leavesOut && on !== noDay && on > 0 && procedure.at(i) !== 'other';
      report({
        rule: 'second-operation',
        severity: 'note',
        ...cellOf(at, ['procedure', 'surgery_date']),
        // A date is never written; what was done is.
        written: procedure.at(i),
        eye: eye[i] as number,
        day: on,
        effect: ends ? 'later examinations left out' : 'kept',
        detail: on,
      });
    }
  },
};
