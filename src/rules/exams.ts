import { integersOf, numbersOf, statesOf } from '../columns/table.js';
import { type CanonicalTables, type Kind, noDay } from '../records/canonical.js';
import { firstRowOf } from './rows.js';

/** The rows of one kind of measurement, column by column. */
export interface Exams {
  kind: Kind;
  length: number;
  eye: Int32Array;
  day: Int32Array;
  /** 1-based declared visit of the row's label, 0 none, −1 before surgery. */
  label: Int32Array;
  source: Int32Array;
  block: Int32Array;
  row: Int32Array;
  state: Uint8Array;
  numbers(column: string): Float64Array;
}

/** One kind of measurement as rules read it; rows are in the order of eye, day, source, row. */
export function examsOf({ measurements }: CanonicalTables, kind: Kind): Exams {
  const table = measurements[kind];
  return {
    kind,
    length: table.numRows(),
    eye: integersOf(table, 'eye'),
    day: integersOf(table, 'day'),
    label: integersOf(table, 'visit'),
    source: integersOf(table, 'source'),
    block: integersOf(table, 'block'),
    row: integersOf(table, 'row'),
    state: statesOf(table),
    numbers: (column) => numbersOf(table, column),
  };
}

/** Whether a row belongs to an eye of the audit and no rule has set it aside. */
export function isFit({ eye, state }: Exams, i: number): boolean {
  return (eye[i] as number) >= 0 && (state[i] as number) < 2;
}

/** The rows of an eye, first to last; nothing where it has none. */
export function* rowsOfEye({ eye }: Exams, of: number): Generator<number> {
  for (let i = firstRowOf(eye, of); i < eye.length && eye[i] === of; i++) yield i;
}

/** Whether an examination took place after surgery, by its day or else by its label. */
export function isAfter({ day, label }: Exams, i: number): boolean {
  return day[i] === noDay ? (label[i] as number) > 0 : (day[i] as number) > 0;
}

function isSameExam(a: Exams, i: number, b: Exams, j: number): boolean {
  return a.day[i] === b.day[j] && (a.day[i] !== noDay || a.label[i] === b.label[j]);
}

/**
 * The fit row of another kind at the same examination: of one eye and day, of one file and row where there is such.
 *
 * @returns row of `b`; −1 where there is none
 */
export function sameExam(a: Exams, i: number, b: Exams): number {
  let found = -1;
  for (const j of rowsOfEye(b, a.eye[i] as number)) {
    if (!isFit(b, j) || !isSameExam(a, i, b, j)) continue;
    if (a.source[i] === b.source[j] && a.row[i] === b.row[j]) return j;
    if (found < 0) found = j;
  }
  return found;
}
