import type { ColumnRecord } from './copy.js';
import type { LeftOut, Role } from './roles.js';

/** What became of one file. Names and headers may be shown; no value of a cell is here. */
export interface FileRecord {
  /** Name of the copy. */
  copy: string;
  /** Whether the file's own name looked like a person's. */
  renamed: boolean;
  /** Its place among the files given, counted from 1. */
  place: number;
  /** Rows that were copied. */
  rows: number;
  /** Rows with too few or too many cells, of which nothing is copied. */
  ragged: number;
  /** Header, titles, blank and summary rows. */
  passedOver: number;
  /** Cells with characters that the encoding does not know. */
  unreadable: number;
  /** Rows that name no patient. */
  nobody: number;
  /** Whether its patients are those of other files, where there are any. */
  isShared: boolean;
  columns: readonly ColumnRecord[];
}

/** What a whole run did. */
export interface RunRecord {
  files: readonly FileRecord[];
  patients: number;
  /** Patients who had no code before. */
  newPatients: number;
  /** Surgeons who are called by codes of the book. */
  surgeons: number;
  /** Whether operations were given their rank in the year. */
  order: boolean;
  operations: number;
  /** Eyes with more than one lens operation. */
  repeatedEyes: number;
  /** Numbers of patients that differ from another in leading zeros alone. */
  zeroDoubles: number;
  /** Whether the patients of a file are told apart by names. */
  namesAsNumbers: boolean;
}

const sum = (files: readonly FileRecord[], of: (one: FileRecord) => number): number =>
  files.reduce((total, one) => total + of(one), 0);

/** Columns that were left out for one of these reasons. */
export function columnsLeftOut(files: readonly FileRecord[], reasons: readonly LeftOut[]): number {
  const isOne = (role: Role): boolean => role.kind === 'left-out' && reasons.includes(role.why);
  return sum(files, ({ columns }) => columns.filter(({ role }) => isOne(role)).length);
}

/** Columns of one kind. */
export function columnsOfKind(files: readonly FileRecord[], kinds: readonly Role['kind'][]): number {
  return sum(files, ({ columns }) => columns.filter(({ role }) => kinds.includes(role.kind)).length);
}

/** Cells in whose place `removed` stands. */
export function cellsRemoved(files: readonly FileRecord[]): number {
  return sum(files, ({ columns }) => columns.reduce((cells, { removed }) => cells + removed, 0));
}

/** Dates of eyes without an operation. */
export function datesWithoutSurgery(files: readonly FileRecord[]): number {
  return sum(files, ({ columns }) => columns.reduce((cells, { withoutSurgery }) => cells + withoutSurgery, 0));
}
