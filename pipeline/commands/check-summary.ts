import { countOfSeverity } from '../../src/findings/builder.js';
import { groupFindings } from '../../src/findings/groups.js';
import { tell } from '../../src/findings/telling.js';
import { count } from '../../src/format/number.js';
import type { Finding } from '../../src/records/finding.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { CheckSummary, FileLine, RuleCount } from '../../src/screens/check.js';
import { valueText } from '../../src/tables/value-text.js';
import type { Words } from '../../src/words/index.js';
import { placedColumns } from '../publish/columns-file.js';
import type { Examined } from '../publish/everything.js';
import { contextOf } from '../publish/finding-lists.js';
import type { AuditFile } from './audit-file.js';
import type { CheckOutcome } from './outcome.js';

type Checked = Extract<CheckOutcome, { kind: 'checked' }>;

/** What the screen of a check tells, every number typeset. */
export function checkSummary(checked: Checked, audit: AuditFile, words: Words): CheckSummary {
  const { plan, found, folder } = checked;
  const number = (measure: string, statistic: string): string =>
    valueText(found.results.get(measure, 'all', statistic), words);
  const { patients } = found.results.get('eyes_operated', 'all', 'count');
  const [setAside, queries, notes] = (['set aside', 'query', 'note'] as const).map((severity) =>
    count(countOfSeverity(found.findings, severity)),
  ) as [string, string, string];
  return {
    title: plan.title,
    audit: audit.typed,
    read: found.raw.map((table) => fileLine(table, words)),
    rows: rowCounts(found),
    columns: typesetColumns(found.raw),
    eyes: {
      eyes: number('eyes_operated', 'count'),
      patients: count(patients),
      both: number('eyes_operated', 'patients_both_eyes'),
    },
    visit: {
      known: number('completeness', 'count'),
      due: number('completeness', 'due'),
      notYetDue: number('completeness', 'not_yet_due'),
    },
    values: { setAside, queries, notes },
    setAside: ruleCounts(checked, 'set aside', words),
    queries: ruleCounts(checked, 'query', words),
    list: audit.shown(`${folder}/queries.csv`),
  };
}

/** The same for programs: counts as numbers. */
export function checkData({ found }: Checked, summary: CheckSummary): Readonly<Record<string, unknown>> {
  const { value: eyes, patients } = found.results.get('eyes_operated', 'all', 'count');
  const counts = (['set aside', 'query', 'note'] as const).map((severity) => [
    severity.replace(' ', '_'),
    countOfSeverity(found.findings, severity),
  ]);
  const { books } = found.tables;
  return {
    outcome: 'checked',
    title: summary.title,
    files: books.map(({ source, ...rows }) => ({ file: found.raw[source]?.label, ...rows })),
    eyes,
    patients,
    findings: Object.fromEntries(counts),
    queries: summary.list,
  };
}

function rowCounts({ raw, tables }: Examined): CheckSummary['rows'] {
  const sum = (of: (books: { read: number; used: number }) => number): number =>
    tables.books.reduce((total, books) => total + of(books), 0);
  return {
    files: count(raw.length),
    rows: count(sum(({ read }) => read)),
    used: count(sum(({ used }) => used)),
    setAside: count(sum(({ read, used }) => read - used)),
  };
}

function typesetColumns(raw: readonly RawTable[]): CheckSummary['columns'] {
  const { placed, all } = placedColumns(raw);
  return { placed: count(placed), all: count(all) };
}

function fileLine({ label, rows, read }: RawTable, { screens }: Words): FileLine {
  const { delimiters, decimals, dateOrders, rows: rowsText } = screens.check.read;
  const how = [delimiters[read.delimiter], decimals[read.decimal], dateOrders[read.dateOrder], read.encoding];
  return { file: label, rows: rowsText(count(rows)), how: how.filter((part) => part !== '').join(', ') };
}

function ruleCounts({ plan, found }: Checked, severity: 'set aside' | 'query', words: Words): readonly RuleCount[] {
  const context = contextOf(found, plan, words);
  return groupFindings(found.findings, severity)
    .toSorted((a, b) => b.count - a.count)
    .map(({ first, count: all }) => ({
      sentence: tell(first[0], context).title,
      count: count(all),
      places: filePlaces(first, context.raw, words),
    }));
}

/** The first places of a rule, one entry a file; each from the fullest wording to the shortest. */
function filePlaces(first: readonly Finding[], raw: readonly RawTable[], words: Words): RuleCount['places'] {
  const sources = [...new Set(first.map(({ source }) => source))];
  return sources.map((source) => {
    const own = first.filter((finding) => finding.source === source);
    const [only, ...more] = own as [Finding, ...Finding[]];
    return more.length === 0 ? placeTexts(only, raw, words) : severalRows(own, raw[source]?.label ?? '', words);
  });
}

/** 'lane.csv rows 88, 91, 102', then with fewer rows. */
function severalRows(own: readonly Finding[], file: string, { screens }: Words): readonly string[] {
  const rows = own.map(({ row }) => String(row));
  return rows.map((_, at) => `${file} ${screens.rows(rows.slice(0, rows.length - at), at > 0)}`);
}

/** 'lane.csv row 88 "Ax" ‘195’', then the same with less of it. */
function placeTexts(
  { source, row, column, written }: Finding,
  raw: readonly RawTable[],
  { screens }: Words,
): readonly string[] {
  const parts = [
    raw[source]?.label ?? '',
    row > 0 ? screens.row(row) : '',
    column === undefined ? '' : `"${column}"`,
    written === undefined ? '' : screens.value(written),
  ].filter((part) => part !== '');
  return parts.map((_, at) => parts.slice(0, parts.length - at).join(' '));
}
