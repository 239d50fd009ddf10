import type { FieldReading } from '../records/canonical.js';
import { millionths } from '../units.js';
import { cellsOf } from './range.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** How far two meridians are from a right angle, degrees 0 to 90. */
function fromRightAngle(a: number, b: number): number {
  const turn = Math.abs(a - b) % 180;
  return 90 - Math.min(turn, 180 - turn);
}

const isAxis = (value: number): boolean => value >= 0 && value <= 180;

function judgePair(first: FieldReading, second: FieldReading, context: RuleContext): void {
  const { raw, plan, report } = context;
  const limit = millionths(thresholdOf('meridians_apart', plan));
  const cells = cellsOf(first, { table: 'keratometries' }, context);
  for (let row = 0; row < first.words.length; row++) {
    const [a, b] = [first, second].map((of) => of.values[of.words.codes[row] as number] as number) as [number, number];
    const eye = first.eyes[row] as number;
    if (eye < 0 || !isAxis(a) || !isAxis(b) || millionths(fromRightAngle(a, b)) <= limit) continue;
    const { source, column, field, words } = first;
    const at = { source, row: raw[source]?.rowNumber(row) ?? 0, column, field, written: words.at(row), eye };
    report({
      rule: 'keratometry-meridians',
      severity: 'note',
      ...at,
      day: cells(row, a).day,
      effect: 'kept',
      detail: a,
      other: b,
    });
  }
}

/** Two meridians of one cornea that are not at right angles, give or take: an axis mistyped, or an irregular cornea. */
export const keratometryMeridians: Rule = {
  id: 'keratometry-meridians',
  judge(context) {
    const { readings } = context.tables;
    for (const first of readings.filter(({ field }) => field === 'k1_axis')) {
      const second = readings.find(({ field, source, block }) => {
        return field === 'k2_axis' && source === first.source && block === first.block;
      });
      if (second) judgePair(first, second, context);
    }
  },
};
