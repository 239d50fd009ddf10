import { integersOf } from '../columns/table.js';
import { fieldNamed } from '../plan/fields.js';
import { type CanonicalTables, noDay } from '../records/canonical.js';
import { type Finding, type Findings, severities } from '../records/finding.js';
import type { RawTable } from '../records/raw-table.js';
import { belongsTo, isBefore, visitRules } from '../visits/visit-rule.js';
import { findingAt } from './builder.js';
import { queryName } from './query-name.js';
import { rowKeys } from './row-keys.js';
import { type TellingContext, tell } from './telling.js';

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

/** Whose eye a finding is about; texts are '' where that is not known. */
interface Whose {
  patient: string;
  eye: 'right' | 'left' | '';
}

/** Index of the row that a spreadsheet shows under this number; undefined where it is not in the table. */
function rowAt(table: RawTable, number: number): number | undefined {
  let low = 0;
  let high = table.rows - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const found = table.rowNumber(middle);
    if (found === number) return middle;
    if (found < number) low = middle + 1;
    else high = middle - 1;
  }
  return undefined;
}

/** From the eye where there is one, else from the cells of the row itself. */
function whoseFinder(tables: CanonicalTables, { raw, plan }: TellingContext): (finding: Finding) => Whose {
  const patient = integersOf(tables.eyes, 'patient');
  const laterality = integersOf(tables.eyes, 'laterality');
  const readers = raw.map((table) => (plan.sources[table.source]?.blocks ?? []).map((block) => rowKeys(table, block)));
  return ({ eye, source, row }) => {
    if (eye >= 0) {
      const code = tables.patients[patient[eye] as number] ?? '';
      return { patient: code, eye: laterality[eye] === 0 ? 'right' : 'left' };
    }
    const table = raw[source];
    const at = table && rowAt(table, row);
    const keys =
      at === undefined ? [] : (readers[source] ?? []).map((of) => ({ patient: of.patient(at), eye: of.eye(at) }));
    const side = keys[0]?.eye;
    // In a file with a block for each side, the row alone does not tell which is meant.
    const sure = keys.every((one) => one.eye === side);
    return { patient: keys[0]?.patient ?? '', eye: sure && (side === 'right' || side === 'left') ? side : '' };
  };
}

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
 * The query list: every finding that sets aside or asks, in the order of patient, eye, day, in words that the clinic
 * can answer.
 */
export function queryRows(findings: Findings, tables: CanonicalTables, context: TellingContext): readonly QueryRow[] {
  const whoseOf = whoseFinder(tables, context);
  const visitOf = visitFinder(context);
  const asked = [severities.indexOf('query'), severities.indexOf('set aside')];
  const listed: { finding: Finding; whose: Whose }[] = [];
  for (let i = 0; i < findings.length; i++) {
    if (!asked.includes(findings.severity[i] as number)) continue;
    const finding = findingAt(findings, i);
    listed.push({ finding, whose: whoseOf(finding) });
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

function queryRow(finding: Finding, { patient, eye }: Whose, visit: string, context: TellingContext): QueryRow {
  const { rule, severity, source, row, column = '', field = '', written = '', day } = finding;
  const days = day === noDay ? '' : String(day);
  const { expected, sentence, act } = tell(finding, context);
  return {
    query: queryName([rule, patient, eye, days, field, written]),
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
