import { wrap90 } from '../optics/axis.js';
import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import { examPlace } from './places.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** A marked astigmatism whose steep meridian turned by a right angle: flat and steep were exchanged once. */
export const keratometryExchanged: Rule = {
  id: 'keratometry-exchanged',
  judge(context) {
    const cornea = examsOf(context.tables, 'keratometries');
    const [flat, steep, axis] = [cornea.numbers('flat'), cornea.numbers('steep'), cornea.numbers('steepAxis')];
    const { before, outcome } = context.assembly();
    const [least, turn] = [
      thresholdOf('exchanged_cylinder', context.plan),
      thresholdOf('exchanged_turn', context.plan),
    ];
    const isMarked = (row: number): boolean =>
      millionths((steep[row] as number) - (flat[row] as number)) >= millionths(least);
    const placeOf = examPlace(context);
    before.keratometries.forEach((first, eye) => {
      const last = outcome.keratometries[eye] as number;
      if (first < 0 || last < 0 || !isMarked(first) || !isMarked(last)) return;
      const [was, is] = [axis[first] as number, axis[last] as number];
      const turned = Math.abs(wrap90(is - was));
      if (!(millionths(turned) >= millionths(90 - turn))) return;
      context.report(
        {
          rule: 'keratometry-exchanged',
          severity: 'query',
          ...placeOf(cornea, last, ['k1_axis', 'k_steep_axis', 'k_cylinder_axis']),
          effect: 'kept',
          detail: was,
          other: is,
        },
        { table: 'keratometries', row: last, as: 'queried' },
      );
    });
  },
};
