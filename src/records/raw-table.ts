import type { WordColumn } from '../columns/word-column.js';

/** How the bytes of one file were read: detected, or declared in audit.yaml. */
export interface ReadAs {
  encoding: string;
  delimiter: 'comma' | 'semicolon' | 'tab' | 'pipe';
  decimal: 'point' | 'comma' | 'none';
  dateOrder: 'day-first' | 'month-first' | 'year-first' | 'none';
  sha256: string;
  bytes: number;
  /** Rows with more or fewer cells than the header. */
  ragged: number;
}

/**
 * One file as text. Only the columns that audit.yaml maps are kept; `columns[i]` belongs to `kept[i]`,
 * the index of its header. Cells are dictionary-coded, no value is altered.
 */
export interface RawTable {
  /** Index into `plan.sources`. A pattern that meets several files gives one table a file, in name order. */
  source: number;
  /** As written in audit.yaml, with '/', never absolute. */
  file: string;
  /** The name that outputs may show: `file`, or 'file 2' where the name itself looks like a person's. */
  label: string;
  /** All headers as written, the columns that were not kept included. */
  header: readonly string[];
  /** Header index of each kept column, ascending. */
  kept: readonly number[];
  columns: readonly WordColumn[];
  rows: number;
  /** Row number as a spreadsheet shows it: the header is row 1, skipped and blank rows are counted. */
  rowNumber(row: number): number;
  read: ReadAs;
  /** What stood in a cell before the clinic corrected it, by row and header index; undefined where nothing was. */
  formerly?: (row: number, header: number) => string | undefined;
}

/** The kept column of a header index. */
export function keptColumn(table: RawTable, headerIndex: number): WordColumn {
  const at = table.kept.indexOf(headerIndex);
  const column = table.columns[at];
  if (!column) throw new RangeError(`keptColumn: header ${headerIndex} of ${table.file} was not kept`);
  return column;
}
