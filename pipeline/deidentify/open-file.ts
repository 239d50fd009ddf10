import { type WordColumn, wordColumn } from '../../src/columns/word-column.js';
import { isFullDate, isMeasurement } from '../../src/deidentify/harmless.js';
import { judgeDecimalMark } from '../../src/intake/decimal-mark.js';
import { headerIdentifier } from '../../src/intake/identifier-header.js';
import { missingWords } from '../../src/intake/missing.js';
import type { NotATable } from '../../src/intake/not-a-table.js';
import { type DecimalMark, parseNumber } from '../../src/intake/number.js';
import type { ExportedFile } from '../../src/propose/exported.js';
import { saysMissing } from '../../src/propose/missing-words.js';
import type { RecognisedFile } from '../../src/propose/placed.js';
import { recognise } from '../../src/propose/recognise.js';
import type { Passed } from '../ingest/read-bytes.js';
import type { TableRead } from '../ingest/read-table.js';
import { ReadFailure } from '../ingest/survey.js';
import type { Layout } from '../ingest/wanted.js';
import type { Io } from '../io.js';
import { type LayoutFrom, openExport } from '../propose/open-export.js';
import type { TopRows } from '../propose/top-rows.js';
import { freeTextColumns } from './free-text.js';

/** A file that is fit to be copied. */
export interface OpenedFile {
  of: RecognisedFile;
  /** Whether the cells of a column were kept; those of free text, addresses and the like were not. */
  isRead(index: number): boolean;
  read: Pick<TableRead, 'rows' | 'passedOver' | 'units'> & { ragged: number; unreadable: number };
}

/** Why a file cannot be copied. */
export type Unfit =
  | { why: 'missing' | 'unreadable' | 'empty' | 'no-header' }
  | { why: 'not-csv'; kind: NotATable }
  | { why: 'quote-open' | 'header-changes'; row: number };

/** Headers whose columns are never asked again: nothing is linked by them and nobody is named in them. */
const neverRead = new Set(['header-address', 'header-contact', 'header-photo']);

/** A header is words; a row with a date or a number in it is one of data, and its cells may not be shown. */
function isHeader(cells: readonly string[]): boolean {
  return cells.every((cell) => {
    const text = cell.trim();
    const isNumber = (['point', 'comma'] as const).some((decimal) => parseNumber(text, { decimal }) !== undefined);
    return text === '' || !(isNumber || isFullDate(text));
  });
}

function unreadableCells({ columns }: TableRead): number {
  let cells = 0;
  for (const { words, codes } of columns) {
    const broken = words.map((word) => word.includes('\ufffd'));
    if (broken.includes(true)) for (const code of codes) if (broken[code]) cells++;
  }
  return cells;
}

/** The decimal mark of a file, from the columns that hold measurements by either mark. */
function decimalOf(columns: readonly WordColumn[], isMissing: (word: string) => boolean): DecimalMark {
  const measured = columns.flatMap(({ words }) => {
    const given = words.filter((word) => !isMissing(word));
    const fits = given.filter((word) => isMeasurement(word, 'point', false) || isMeasurement(word, 'comma', false));
    return 2 * fits.length > given.length ? given : [];
  });
  return judgeDecimalMark(measured).mark ?? 'none';
}

/** The file with all its columns; those that were not kept are blank. */
function exported(path: string, top: TopRows, encoding: string, read: TableRead): ExportedFile {
  const { rows, rowNumber } = read;
  const header = read.header ?? [];
  const blank = wordColumn([''], new Uint16Array(rows));
  const columns = header.map((_, index) => read.columns[read.layout.kept.indexOf(index)] ?? blank);
  const builtIn = missingWords();
  const isMissing = (cell: string): boolean => builtIn(cell) || saysMissing(cell);
  const decimal = decimalOf(columns, isMissing);
  const parts = { header, columns, rows, rowNumber, encoding, decimal, isMissing };
  return { file: path, label: path, ...top, ...parts, dateOrder: undefined, missing: [] };
}

/** Which columns are kept: those of which cells may leave the clinic, link files, or name persons. */
function layout(
  header: readonly string[],
  isText: (index: number) => boolean,
  isReviewed: (header: string) => boolean,
): Layout {
  const isKept = (text: string, index: number): boolean =>
    isReviewed(text) || !(isText(index) || neverRead.has(headerIdentifier(text) ?? ''));
  const kept = header.flatMap((text, index) => (isKept(text, index) ? [index] : []));
  return { kept, uses: kept.map(() => []), unsettled: [] };
}

async function opened(
  path: string,
  isReviewed: (header: string) => boolean,
  io: Io,
  passed: Passed,
): Promise<OpenedFile | Unfit> {
  const layoutFrom: LayoutFrom = async (text, top) => {
    const isText = await freeTextColumns(text, top);
    return (header) => layout(header, isText, isReviewed);
  };
  const found = await openExport(path, layoutFrom, io, passed);
  if (found.why === 'no-delimiter') return { why: 'no-header' };
  if (found.why !== undefined) return found;
  const { top, encoding, read } = found;
  if (read.quoteRow > 0) return { why: 'quote-open', row: read.quoteRow };
  if (!read.header || read.rows === 0) return { why: 'empty' };
  const other = read.odd.find(({ kind }) => kind === 'header changes');
  if (other) return { why: 'header-changes', row: other.row };
  if (!isHeader(read.header)) return { why: 'no-header' };
  const { rows, passedOver, units, ragged } = read;
  return {
    of: recognise(exported(path, top, encoding, read)),
    isRead: (index) => read.layout.kept.includes(index),
    read: { rows, passedOver, units, ragged: ragged.length, unreadable: unreadableCells(read) },
  };
}

/** Reads a file as `run` reads it, or says why it cannot be. @param isReviewed  whether a column of text is to be kept */
export async function openFile(
  path: string,
  isReviewed: (header: string) => boolean,
  io: Io,
  passed: Passed,
): Promise<OpenedFile | Unfit> {
  const entry = await io.stat(path);
  if (!entry) return { why: 'missing' };
  if (entry.kind === 'folder') return { why: 'unreadable' };
  try {
    return await opened(path, isReviewed, io, passed);
  } catch (error) {
    if (error instanceof ReadFailure) return { why: 'unreadable' };
    throw error;
  }
}
