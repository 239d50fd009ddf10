import { calendarFromDays } from '../intake/calendar.js';
import type { DateOrder } from '../intake/date.js';
import type { Laterality } from '../intake/laterality.js';
import type { RecognisedFile } from '../propose/placed.js';
import type { Days } from '../units.js';
import { removed } from './harmless.js';
import type { DayZeros } from './operations.js';
import { eyesOfRows } from './people.js';
import type { Role } from './roles.js';
import { daysOfRows, type WrittenDay } from './written-dates.js';

/** A column of a copy. */
export interface CopyColumn {
  header: string;
  cell(row: number): string;
  /** Cells in whose place `removed` stands. */
  removed: number;
  /** Dates of eyes without an operation, for which there is no day to count from. */
  withoutSurgery: number;
}

/** What dates of a file are turned with. */
export interface TimeContext {
  of: RecognisedFile;
  roles: readonly Role[];
  dateOrder: DateOrder;
  /** Patient of each row, negative where it has none. */
  patients: Int32Array;
  zeros: DayZeros;
  /** Rank in its year of the operation that a column of surgery dates tells in a row; undefined: ranks are left out. */
  rank: ((column: number, row: number) => number | undefined) | undefined;
}

/** How many rows pass a test. */
export function rowsThat(rows: number, test: (row: number) => boolean): number {
  let count = 0;
  for (let row = 0; row < rows; row++) if (test(row)) count++;
  return count;
}

/** A text for a day that could be read; a blank cell stays blank. */
const textOf = (day: WrittenDay, make: (day: Days) => string): string =>
  day === 'blank' ? '' : day === 'unread' ? removed : make(day);

const yearText = (day: Days): string => String(calendarFromDays(day).year);

const named = (...parts: readonly (string | undefined)[]): string => parts.filter((part) => part).join(' ');

/** A date of surgery becomes its year and, unless left out, the rank of the operation in that year. */
export function surgeryColumns(
  { of, dateOrder, rank }: TimeContext,
  index: number,
  side: Laterality | undefined,
): readonly CopyColumn[] {
  const day = daysOfRows(of.file, index, dateOrder);
  const unread = rowsThat(of.file.rows, (row) => day(row) === 'unread');
  const column = (header: string, make: (day: Days, row: number) => string): CopyColumn => ({
    header: named(side, header),
    cell: (row) => textOf(day(row), (one) => make(one, row)),
    removed: unread,
    withoutSurgery: 0,
  });
  const year = column('surgery_year', yearText);
  return rank ? [year, column('surgery_order', (_, row) => String(rank(index, row) ?? ''))] : [year];
}

/** Days counted from the operation of one eye. */
interface View {
  /** The eye, where a column of days for each is needed. */
  side: Laterality | undefined;
  zero(row: number): Days | undefined;
}

/**
 * From which operation the days of a column count: that of the eye its header names, or the row names. Where neither
 * says which eye, one column an eye, unless both give the same.
 */
function viewsOf({ of, patients, zeros }: TimeContext, side: Laterality | undefined): readonly View[] {
  const eyes = eyesOfRows(of);
  const from =
    (eyeOf: (row: number) => string) =>
    (row: number): Days | undefined => {
      const patient = patients[row] as number;
      return patient < 0 ? undefined : zeros.ofEye(patient, eyeOf(row));
    };
  if (side !== undefined) return [{ side, zero: from(() => side) }];
  if (eyes) return [{ side, zero: from(eyes) }];
  const [right, left] = [from(() => 'right'), from(() => 'left')];
  const differ = rowsThat(of.file.rows, (row) => {
    const [one, other] = [right(row), left(row)];
    return one !== undefined && other !== undefined && one !== other;
  });
  if (differ === 0) return [{ side, zero: (row) => right(row) ?? left(row) }];
  return [
    { side: 'right', zero: right },
    { side: 'left', zero: left },
  ];
}

/** A column of dates, as it is read and called. */
interface Dates {
  day: (row: number) => WrittenDay;
  /** What tells it from other columns of dates in the file; undefined where there is none. */
  when: string | undefined;
  rows: number;
}

function daysColumn({ side, zero }: View, { day, when, rows }: Dates): CopyColumn {
  const count = (one: Days, from: Days | undefined): string => (from === undefined ? '' : String(one - from));
  return {
    header: named(side, when, 'days'),
    cell: (row) => textOf(day(row), (one) => count(one, zero(row))),
    removed: rowsThat(rows, (row) => day(row) === 'unread'),
    withoutSurgery: 0,
  };
}

/** Every other date becomes days from the surgery of its eye; of patients who were not operated, the year. */
export function dateColumns(
  context: TimeContext,
  index: number,
  { side, visit }: Extract<Role, { kind: 'date' }>,
  header: string,
): readonly CopyColumn[] {
  const { of, roles, dateOrder, patients, zeros } = context;
  const { rows } = of.file;
  const day = daysOfRows(of.file, index, dateOrder);
  const isOnly = roles.filter(({ kind }) => kind === 'date').length === 1;
  const dates: Dates = { day, when: isOnly ? undefined : (visit ?? header), rows };
  const views = viewsOf(context, side);
  const isWithout = (row: number): boolean =>
    typeof day(row) === 'number' && views.every(({ zero }) => zero(row) === undefined);
  // The year of a visit beside days from a known year would tell on which side of New Year the operation lay.
  const isYearTold = (row: number): boolean => isWithout(row) && zeros.ofPatient(patients[row] as number) === undefined;
  const year: CopyColumn = {
    header: named(dates.when, 'exam_year'),
    cell: (row) => (isYearTold(row) ? yearText(day(row) as Days) : ''),
    removed: 0,
    withoutSurgery: 0,
  };
  const days = views.map((view) => daysColumn(view, dates));
  const all = rowsThat(rows, isYearTold) > 0 ? [...days, year] : days;
  const withoutSurgery = rowsThat(rows, isWithout);
  return all.map((column, at) => (at === 0 ? { ...column, withoutSurgery } : column));
}
