import type { WordColumn } from '../columns/word-column.js';
import type { DateOrder } from '../intake/date.js';
import type { DecimalMark } from '../intake/number.js';

/** One file with all its columns, and how it has been read so far. */
export interface ExportedFile {
  /** Path as audit.yaml will name it. */
  file: string;
  /** The name that screens may show: 'file 2' where the name itself looks like a person's. */
  label: string;
  header: readonly string[];
  /** For each header the cell of a row of groups above it, carried on to the right; '' none. */
  groups: readonly string[];
  columns: readonly WordColumn[];
  rows: number;
  rowNumber(row: number): number;
  /** Row of the headers as a spreadsheet shows it. */
  headerRow: number;
  delimiter: 'comma' | 'semicolon' | 'tab' | 'pipe';
  encoding: string;
  decimal: DecimalMark;
  /** Undefined where day and month cannot be told apart; 'none' where the file has no dates. */
  dateOrder: DateOrder | 'none' | undefined;
  /** Words of the file that say "no value" and that audit.yaml must declare. */
  missing: readonly string[];
  /** Whether a cell says that there is no value. */
  isMissing(cell: string): boolean;
}

/** One column of a file. @throws {RangeError} when there is none of this index */
export function columnOf(file: ExportedFile, index: number): WordColumn {
  const column = file.columns[index];
  if (!column)
    throw new RangeError(`columnOf: ${file.file} has no column ${index}; expected 0 to ${file.columns.length - 1}`);
  return column;
}
