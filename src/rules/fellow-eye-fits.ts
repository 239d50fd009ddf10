import { examsOf } from './exams.js';
import { pairsOfEyes } from './fellow.js';
import { misplacedCorneas } from './fellow-corneas.js';
import { misplacedLengths } from './fellow-lengths.js';
import { examPlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

const shared = { rule: 'fellow-eye-fits', severity: 'query', effect: 'kept' } as const;

function judgeCorneas(context: RuleContext): void {
  const { tables, plan, report } = context;
  const limits = { apart: thresholdOf('fellow_apart', plan), near: thresholdOf('fellow_near', plan) };
  const cornea = examsOf(tables, 'keratometries');
  const placeOf = examPlace(context);
  for (const { row, own, fellow } of misplacedCorneas(tables, limits)) {
    const finding = { ...shared, ...placeOf(cornea, row), detail: own, other: fellow };
    report(finding, { table: 'keratometries', row, as: 'queried' });
  }
}

function judgeLengths({ tables, raw, plan, report }: RuleContext): void {
  const limits = { apart: thresholdOf('fellow_length_apart', plan), near: thresholdOf('fellow_length_near', plan) };
  for (const { reading, row, eye, own } of misplacedLengths(tables.readings, pairsOfEyes(tables), limits)) {
    const { source, column, field, words } = reading;
    const at = { source, row: raw[source]?.rowNumber(row) ?? 0, column, field, written: words.at(row), eye };
    report({ ...shared, ...at, detail: own });
  }
}

/** K or axial length that fits the fellow eye better than its own: right and left may have been exchanged once. */
export const fellowEyeFits: Rule = {
  id: 'fellow-eye-fits',
  judge(context) {
    judgeCorneas(context);
    judgeLengths(context);
  },
};
