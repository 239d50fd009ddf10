import { statesOf } from '../../src/columns/table.js';
import { type CanonicalTables, type Kind, kinds } from '../../src/records/canonical.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { Results } from '../../src/results/index.js';
import { type Spreadsheet, spreadsheetFile } from './csv-file.js';
import type { OutputFile } from './replace.js';

const header = ['stage', 'of', 'group', 'reason', 'count'];

/**
 * The books of a run, as far as it came: rows of every file, measurements of every kind, eyes of every family and
 * cohort. In each part what came in is what was kept and what was left out, by reason.
 */
export function flowFile(
  path: string,
  raw: readonly RawTable[],
  tables: CanonicalTables | undefined,
  results: Results | undefined,
  spreadsheet: Spreadsheet,
): OutputFile {
  const rows = [
    ...(tables ? tables.books.flatMap((books) => fileRows(raw[books.source]?.label ?? '', books)) : []),
    ...(tables ? (Object.keys(kinds) as Kind[]).flatMap((kind) => measurementRows(kind, tables)) : []),
    ...(results ? eyeRows(results) : []),
  ];
  return spreadsheetFile(path, header, rows, spreadsheet);
}

type Row = readonly string[];

function fileRows(file: string, { read, used, setAside }: CanonicalTables['books'][number]): readonly Row[] {
  const line = (reason: string, count: number): Row => ['rows', file, '', reason, String(count)];
  const left = Object.entries(setAside).map(([reason, count]) => line(`set aside: ${reason}`, count));
  return [line('read', read), ...left, line('used', used)];
}

function measurementRows(kind: Kind, { measurements }: CanonicalTables): readonly Row[] {
  const states = statesOf(measurements[kind]);
  if (states.length === 0) return [];
  const count = (state: number): number => states.reduce((sum, each) => (each === state ? sum + 1 : sum), 0);
  const line = (reason: string, number: number): Row => ['measurements', kind, '', reason, String(number)];
  return [
    line('in', states.length),
    line('set aside', count(2)),
    line('kept, to confirm', count(1)),
    line('kept', count(0)),
  ];
}

function eyeRows({ rows }: Results): readonly Row[] {
  return rows
    .filter(({ measure }) => measure.startsWith('flow:'))
    .map(({ measure, group, statistic, value }) => ['eyes', measure.slice(5), group, statistic, String(value ?? '')]);
}
