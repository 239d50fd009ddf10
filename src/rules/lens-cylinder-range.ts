import { madeFromCylinder } from './lens-sphere.js';
import { rangeRule } from './range.js';
import type { Mark, Rule } from './rule.js';

const range = rangeRule('lens-cylinder-range', {
  lens_cylinder: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});

/**
 * A cylinder in which no lens is made, or one with a minus, is set aside; and with it a power that was worked out from
 * it.
 */
export const lensCylinderRange: Rule = {
  id: range.id,
  judge(context) {
    const isMade = madeFromCylinder(context);
    const powers = (marks: readonly Mark[]): readonly Mark[] =>
      marks.flatMap((mark) =>
        mark.table === 'eyes' && mark.as === 'set aside' && isMade(mark.row) ? [{ ...mark, field: 'lens_power' }] : [],
      );
    range.judge({ ...context, report: (found, ...marks) => context.report(found, ...marks, ...powers(marks)) });
  },
};
