import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import { furtherFrom, meanOf, pairsOfEyes } from './fellow.js';
import { examPlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Mean of flat and steep power before surgery, one an eye; NaN where it was not measured. */
export function meanKBefore({ tables, assembly }: RuleContext): Float64Array {
  const cornea = examsOf(tables, 'keratometries');
  const [flat, steep] = [cornea.numbers('flat'), cornea.numbers('steep')];
  return Float64Array.from(assembly().before.keratometries, (row) =>
    row < 0 ? Number.NaN : ((flat[row] as number) + (steep[row] as number)) / 2,
  );
}

/** Two eyes of one patient that differ in corneal power: noted where it is commonly measured again, asked far beyond. */
export const keratometrySides: Rule = {
  id: 'keratometry-sides',
  judge(context) {
    const { tables, plan, report } = context;
    const means = meanKBefore(context);
    const [asked, noted] = [thresholdOf('keratometry_sides', plan), thresholdOf('keratometry_sides_noted', plan)];
    const cornea = examsOf(tables, 'keratometries');
    const rows = context.assembly().before.keratometries;
    const mean = meanOf(means);
    const placeOf = examPlace(context);
    for (const pair of pairsOfEyes(tables)) {
      const apart = millionths(Math.abs((means[pair[0]] as number) - (means[pair[1]] as number)));
      if (!(apart > millionths(Math.min(asked, noted)))) continue;
      const [eye, fellow] = furtherFrom(mean, means, pair);
      const row = rows[eye] as number;
      const isAsked = apart > millionths(asked);
      const finding = { ...placeOf(cornea, row), detail: means[eye] as number, other: means[fellow] as number };
      const mark = { table: 'keratometries', row, as: 'queried' } as const;
      const severity = isAsked ? 'query' : 'note';
      report({ rule: 'keratometry-sides', severity, ...finding, effect: 'kept' }, ...(isAsked ? [mark] : []));
    }
  },
};
