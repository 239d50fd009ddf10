import { examsOf } from './exams.js';
import { exchangedCorneas, exchangedLengths } from './exchanged-patients.js';
import { examPlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

const shared = { rule: 'other-patient-fits', severity: 'query', effect: 'kept' } as const;

function judgeCorneas(context: RuleContext): void {
  const { tables, raw, plan, report } = context;
  const limits = { apart: thresholdOf('fellow_apart', plan), near: thresholdOf('fellow_near', plan) };
  const cornea = examsOf(tables, 'keratometries');
  const placeOf = examPlace(context);
  for (const { row, own, other } of exchangedCorneas(tables, limits)) {
    const counterpart = raw[cornea.source[other] as number]?.rowNumber(cornea.row[other] as number) ?? 0;
    const finding = { ...shared, ...placeOf(cornea, row), detail: own, other: counterpart };
    report(finding, { table: 'keratometries', row, as: 'queried' });
  }
}

function judgeLengths({ tables, raw, plan, report }: RuleContext): void {
  const limits = { apart: thresholdOf('fellow_length_apart', plan), near: thresholdOf('fellow_length_near', plan) };
  for (const { reading, row, eye, own, other } of exchangedLengths(tables, limits)) {
    const { source, column, field, words } = reading;
    const rowNumber = (of: number): number => raw[source]?.rowNumber(of) ?? 0;
    const at = { source, row: rowNumber(row), column, field, written: words.at(row), eye };
    report({ ...shared, ...at, detail: own, other: rowNumber(other) });
  }
}

/**
 * K or axial length of two patients of which each fits the other's eye and not its own: a code was mistaken, or two
 * files exchanged at the device. One measurement under a wrong code, of a patient who is not there, no data can tell.
 */
export const otherPatientFits: Rule = {
  id: 'other-patient-fits',
  judge(context) {
    judgeCorneas(context);
    judgeLengths(context);
  },
};
