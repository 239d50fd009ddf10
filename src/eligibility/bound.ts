import { daysFromCalendar } from '../intake/calendar.js';
import { parseDate } from '../intake/date.js';

/** What a condition compares with: a number, a day, or a year from its first day to its last. */
export interface Bound {
  /** The same as `last` but for a year; days since 1970-01-01 for dates. */
  first: number;
  last: number;
  isDate: boolean;
}

/**
 * A value of a condition as something with a size.
 *
 * @param wanted  a number where the field holds numbers; a text of four digits is a year
 * @returns undefined where a text is neither a date nor a year
 * @source definition; a year begins on 1 January and ends on 31 December
 * @example boundOf('2025') // { first: 20089, last: 20453, isDate: true }
 */
export function boundOf(wanted: string | number): Bound | undefined {
  if (typeof wanted === 'number') return { first: wanted, last: wanted, isDate: false };
  const text = wanted.trim();
  if (/^\d{4}$/.test(text)) {
    const year = Number(text);
    const first = daysFromCalendar({ year, month: 1, day: 1 });
    const last = daysFromCalendar({ year, month: 12, day: 31 });
    return first === undefined || last === undefined ? undefined : { first, last, isDate: true };
  }
  const day = parseDate(text, 'year-first');
  return day === undefined ? undefined : { first: day, last: day, isDate: true };
}
