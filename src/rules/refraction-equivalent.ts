import { sphericalEquivalent } from '../optics/spherical-equivalent.js';
import { millionths } from '../units.js';
import { examsOf, isFit } from './exams.js';
import { rowsOfBlock } from './rows.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** A spherical equivalent in the export that is not that of sphere and cylinder beside it: one of the three is a slip. */
export const refractionEquivalent: Rule = {
  id: 'refraction-equivalent',
  judge({ tables, raw, plan, report }) {
    const refractions = examsOf(tables, 'refractions');
    const [sphere, cylinder] = [refractions.numbers('sphere'), refractions.numbers('cylinder')];
    const limit = millionths(thresholdOf('equivalent', plan));
    for (const { field, source, block, column, words, values } of tables.readings) {
      if (field !== 'supplied_se') continue;
      const rows = rowsOfBlock(tables.measurements.refractions, source, block, words.length);
      rows.forEach((i, row) => {
        if (i < 0 || !isFit(refractions, i)) return;
        const own = sphericalEquivalent(sphere[i] as number, cylinder[i] as number);
        const supplied = values[words.codes[row] as number] as number;
        if (!(millionths(Math.abs(supplied - own)) > limit)) return;
        const place = { source, row: raw[source]?.rowNumber(row) ?? 0, column, field, written: words.at(row) };
        const whose = { eye: refractions.eye[i] as number, day: refractions.day[i] as number };
        report(
          {
            rule: 'refraction-equivalent',
            severity: 'query',
            ...place,
            ...whose,
            effect: 'kept',
            detail: supplied,
            other: own,
          },
          { table: 'refractions', row: i, as: 'queried' },
        );
      });
    }
  },
};
