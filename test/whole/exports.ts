import { parse as parseCsv } from 'csv-parse/sync';
import iconv from 'iconv-lite';
import { parse, stringify } from 'yaml';
import { resultsFile } from '../../pipeline/publish/results-file.js';
import { committed } from '../sample-exports/committed.js';
import { type Audit, auditOf } from './audit.js';

/** One export as text cells, before it is written in some delimiter and encoding. */
export interface Sheet {
  encoding: string;
  delimiter: string;
  above: string[];
  header: string[];
  rows: string[][];
}

export type ColumnForm = string | { column: string; occurrence?: number; [key: string]: unknown };

/** A source of audit.yaml as written, or one of its blocks. */
export interface SourceForm {
  file: string;
  columns: Record<string, ColumnForm>;
  blocks?: SourceForm[];
  reading?: Record<string, unknown>;
  constants?: Record<string, unknown>;
}

/** An audit.yaml and its exports, to be changed by a test. */
export interface Exports {
  audit: { sources: SourceForm[]; [key: string]: unknown };
  sheets: Record<string, Sheet>;
}

const delimiters: Readonly<Record<string, string>> = { comma: ',', semicolon: ';', tab: '\t', pipe: '|' };

/** A committed file as text cells, read by csv-parse as audit.yaml says that it is written. */
function sheetOf({ file, reading = {} }: SourceForm): Sheet {
  const {
    encoding = 'utf-8',
    delimiter: named = 'comma',
    header_row: headerRow = 1,
  } = reading as Partial<Record<string, string>>;
  const delimiter = delimiters[named] ?? ',';
  const lines: string[][] = parseCsv(iconv.decode(committed(file), encoding), { delimiter, relax_column_count: true });
  const above = Number(headerRow) - 1;
  const [header = [], ...rows] = lines.slice(above);
  return { encoding, delimiter, above: lines.slice(0, above).map((cells) => cells.join(delimiter)), header, rows };
}

/** The committed sample, a fresh copy each time. */
export function sampleExports(): Exports {
  const audit: Exports['audit'] = parse(committed('audit.yaml').toString('utf8'));
  return { audit, sheets: Object.fromEntries(audit.sources.map((source) => [source.file, sheetOf(source)])) };
}

function bytesOf({ encoding, delimiter, above, header, rows }: Sheet): Uint8Array {
  const cell = (text: string): string => (text.includes(delimiter) ? `"${text}"` : text);
  const lines = [...above, ...[header, ...rows].map((cells) => cells.map(cell).join(delimiter))];
  return iconv.encode(`${lines.join('\r\n')}\r\n`, encoding, { addBOM: encoding === 'utf-16' });
}

/** The audit of these exports. */
export function auditOfExports({ audit, sheets }: Exports): Promise<Audit> {
  const files = Object.fromEntries(Object.entries(sheets).map(([file, sheet]) => [file, bytesOf(sheet)]));
  return auditOf(stringify(audit), files);
}

/** results.csv of these exports. */
export async function resultsText(exports: Exports): Promise<string> {
  const { rows } = await auditOfExports(exports);
  return Buffer.from(resultsFile('results.csv', rows).bytes).toString('utf8');
}

/** Every place in audit.yaml where a file's columns are named: the source, and its blocks. */
export function mappingsOf({ audit }: Exports, file: string): SourceForm[] {
  return audit.sources.filter((source) => source.file === file).flatMap((source) => [source, ...(source.blocks ?? [])]);
}

/** Where a column stands. @throws where the sheet has none */
export function columnIndex({ header }: Sheet, form: ColumnForm): number {
  const { column, occurrence = 1 } = typeof form === 'string' ? { column: form } : form;
  const met = header.flatMap((one, index) => (one === column ? [index] : []));
  const index = met[occurrence - 1];
  if (index === undefined) throw new RangeError(`columnIndex: no ${column} among ${header.join(', ')}`);
  return index;
}

/** Rewrites the cells of one column, row by row. */
export function rewrite(sheet: Sheet, form: ColumnForm, of: (cell: string, row: string[]) => string): void {
  const index = columnIndex(sheet, form);
  for (const row of sheet.rows) row[index] = of(row[index] ?? '', row);
}

/** The sheet of a file. @throws where there is none */
export function sheetNamed({ sheets }: Exports, file: string): Sheet {
  const sheet = sheets[file];
  if (!sheet) throw new RangeError(`sheetNamed: no ${file}`);
  return sheet;
}
