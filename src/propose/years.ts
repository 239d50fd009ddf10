import { calendarFromDays } from '../intake/calendar.js';
import { dateInOrder, splitDate } from '../intake/date.js';
import type { ExportedFile } from './exported.js';
import { placedAs } from './eye-rows.js';
import type { RecognisedFile } from './placed.js';
import type { Profile } from './profile.js';

/** Rows of each year that the dates of a column lie in. */
export function yearCounts(file: ExportedFile, profile: Profile): ReadonlyMap<number, number> {
  const order = file.dateOrder && file.dateOrder !== 'none' ? file.dateOrder : 'day-first';
  const found = new Map<number, number>();
  for (const { word, cells } of profile.words) {
    const written = splitDate(word);
    // While the order is open the other one tells the year as well.
    const days = written && (dateInOrder(written, order) ?? dateInOrder(written, 'month-first'));
    const year = days === undefined ? undefined : calendarFromDays(days).year;
    if (year !== undefined) found.set(year, (found.get(year) ?? 0) + cells);
  }
  return found;
}

export interface OperationYears {
  /** Ascending. */
  all: readonly number[];
  /** Without years of so few operations that they are likelier slips of the date. */
  usual: readonly number[];
  rare: readonly { year: number; rows: number }[];
  rows: number;
}

/** Operations that make a year more than a slip: this share of them all, or this many. */
const usualShare = 0.01;
const usualRows = 5;

function countsOf({ file, placed, profiles }: RecognisedFile): ReadonlyMap<number, number> {
  const date = placedAs({ placed }, 'surgery_date');
  const profile = profiles[(date ?? placedAs({ placed }, 'surgery_year'))?.index ?? -1];
  if (!profile) return new Map();
  if (date) return yearCounts(file, profile);
  return new Map(
    profile.words.filter(({ value }) => Number.isInteger(value)).map(({ value, cells }) => [value, cells]),
  );
}

/** Years of all operations. */
export function operationYears(files: readonly { of: RecognisedFile; operates: boolean }[]): OperationYears {
  const counts = new Map<number, number>();
  for (const { of, operates } of files) {
    if (operates) for (const [year, rows] of countsOf(of)) counts.set(year, (counts.get(year) ?? 0) + rows);
  }
  const all = [...counts.keys()].sort((a, b) => a - b);
  const rows = [...counts.values()].reduce((sum, n) => sum + n, 0);
  const isUsual = (year: number): boolean => {
    const own = counts.get(year) as number;
    return own >= usualRows || own >= usualShare * rows;
  };
  const rare = all.filter((year) => !isUsual(year)).map((year) => ({ year, rows: counts.get(year) as number }));
  return { all, usual: all.filter(isUsual), rare, rows };
}
