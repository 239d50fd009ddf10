import { fieldNamed } from '../plan/fields.js';
import { type CanonicalTables, noDay } from '../records/canonical.js';
import { type Finding, type Findings, severities } from '../records/finding.js';
import { belongsTo, isBefore, visitRules } from '../visits/visit-rule.js';
import { findingAt } from './builder.js';
import { type TellingContext, tell } from './telling.js';
import { nameOf, type Whose, whoseFinder } from './whose.js';

/** Columns of the query list; the clinic fills the last two. */
export const queryColumns = [
  'query',
  'rule',
  'severity',
  'patient',
  'eye',
  'visit',
  'days',
  'file',
  'row',
  'column',
  'value',
  'expected',
  'please_check',
  'answer',
  'corrected_value',
] as const;

/** One line of the query list, as text for every column of it. */
export type QueryRow = Readonly<Record<(typeof queryColumns)[number], string>>;

/** The visit that a day belongs to; '' where it belongs to none, or there is no day. */
function visitFinder({ plan, words }: TellingContext): (day: number) => string {
  const visits = visitRules(plan);
  return (day) => {
    if (day === noDay) return '';
    if (isBefore(day, 0, plan)) return words.before;
    return visits.find((visit) => belongsTo(visit, day, 0, plan))?.name ?? '';
  };
}

/** The value as written, between marks that keep a spreadsheet from reading 6/9 as a date; no date is ever written. */
function shownValue({ written, field }: Finding): string {
  const isDate = fieldNamed(field ?? '')?.type === 'date';
  return written === undefined || isDate ? '' : `‘${written}’`;
}

const byUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Rows without a patient stand last. */
const withoutLast = (text: string): string => (text === '' ? '\uffff' : text);

/**
 * The query list: every finding that sets aside or asks and was not answered for good, in the order of patient, eye,
 * day, in words that the clinic can answer.
 */
export function queryRows(findings: Findings, tables: CanonicalTables, context: TellingContext): readonly QueryRow[] {
  const whoseOf = whoseFinder(tables, context);
  const visitOf = visitFinder(context);
  const asked = [severities.indexOf('query'), severities.indexOf('set aside')];
  const listed: { finding: Finding; whose: Whose }[] = [];
  for (let i = 0; i < findings.length; i++) {
    if (!asked.includes(findings.severity[i] as number)) continue;
    const finding = findingAt(findings, i);
    const whose = whoseOf(finding);
    if (!context.answered?.has(nameOf(finding, whose, context))) listed.push({ finding, whose });
  }
  listed.sort(
    (a, b) =>
      byUnit(withoutLast(a.whose.patient), withoutLast(b.whose.patient)) ||
      byUnit(b.whose.eye, a.whose.eye) ||
      a.finding.day - b.finding.day ||
      a.finding.source - b.finding.source ||
      a.finding.row - b.finding.row,
  );
  return listed.map(({ finding, whose }) => queryRow(finding, whose, visitOf(finding.day), context));
}

/** Single findings as lines of the query list: whose eye, which visit, which cell. */
export function queryRowOf(tables: CanonicalTables, context: TellingContext): (finding: Finding) => QueryRow {
  const [whoseOf, visitOf] = [whoseFinder(tables, context), visitFinder(context)];
  return (finding) => queryRow(finding, whoseOf(finding), visitOf(finding.day), context);
}

function queryRow(finding: Finding, whose: Whose, visit: string, context: TellingContext): QueryRow {
  const { patient, eye } = whose;
  const { rule, severity, source, row, column = '', day } = finding;
  const days = day === noDay ? '' : String(day);
  const { expected, sentence, act } = tell(finding, context);
  return {
    query: nameOf(finding, whose, context),
    rule,
    severity,
    patient,
    eye: eye === '' ? '' : context.words.eye[eye],
    visit,
    days,
    file: context.raw[source]?.label ?? '',
    row: row === 0 ? '' : String(row),
    column,
    value: shownValue(finding),
    expected,
    please_check: `${sentence}: ${act}`,
    answer: '',
    corrected_value: '',
  };
}
