import type { Days } from '../units.js';
import { daysFromCalendar } from './calendar.js';
import { plainSigns } from './signs.js';

/** The order in which a date that is all digits names day, month and year. */
export type DateOrder = 'day-first' | 'month-first' | 'year-first';

/** Three numbers of a date in the order written; a month's name is already its number. */
export interface WrittenDate {
  numbers: readonly [string, string, string];
  /** Where the month stands, when a name says so. */
  monthAt?: 0 | 1;
}

/** First letters that tell the months apart, in English, German and French; accents are taken off before. */
const monthNames: readonly (readonly [start: string, month: number])[] = [
  ['jan', 1],
  ['feb', 2],
  ['fev', 2],
  ['mar', 3],
  ['mae', 3],
  ['mrz', 3],
  ['apr', 4],
  ['avr', 4],
  ['may', 5],
  ['mai', 5],
  ['juin', 6],
  ['jun', 6],
  ['juil', 7],
  ['jul', 7],
  ['aug', 8],
  ['aou', 8],
  ['sep', 9],
  ['okt', 10],
  ['oct', 10],
  ['nov', 11],
  ['dez', 12],
  ['dec', 12],
];

const timeOfDay =
  /[T ,]+\d{1,2}[:h]\d{2}(?:[:.]\d{2}(?:[.,]\d+)?)?(?: ?[ap]\.?m\.?)?(?: ?(?:Z|UTC|[+-]\d{2}:?\d{2}))?$/i;
const digits = /^(\d{1,4}) ?([./\- ]) ?(\d{1,2}) ?\2 ?(\d{1,4})\.?$/;
const compact = /^(\d{4})(\d{2})(\d{2})$/;
const nameInside = /^(\d{1,4})(?:st|nd|rd|th|er|\.)? ?[./\- ]? ?([a-z]{3,9})\.? ?[./\-, ]? ?(\d{1,4})$/;
const nameFirst = /^([a-z]{3,9})\.? ?[./\- ]? ?(\d{1,2})(?:st|nd|rd|th)?,? ?[./\- ]? ?(\d{4}|\d{2})$/;

/**
 * A date as people type it, as days since 1970-01-01: any separator, month names in English, German and French, a time
 * of day behind it, two-digit years as 20yy. A year of four digits in front, and a month's name, explain themselves.
 *
 * @param text   one cell as written
 * @param order  the file's order, for dates that are all digits
 * @returns whole days; undefined where the text is no date, or the calendar has no such day (years 1900–2199)
 * @source spellings in common practice, no source; ISO 8601 for year-month-day
 * @example parseDate('13.05.2024 09:30', 'day-first') // 19856
 */
export function parseDate(text: string, order: DateOrder): Days | undefined {
  const written = splitDate(text);
  return written && dateInOrder(written, order);
}

/**
 * The three numbers of a date, in the order written.
 *
 * @param text  one cell as written
 * @returns undefined where the text does not have the shape of a date
 * @example splitDate('3. März 24') // numbers '3', '3', '24' with the month at 1
 */
export function splitDate(text: string): WrittenDate | undefined {
  // No date with a time of day is as long; remarks are, and every one of them comes by.
  if (text.length > 80) return undefined;
  const plain = plainSigns(text).replace(timeOfDay, '').trim();
  const [, a, , b, c] = digits.exec(plain) ?? [];
  if (a && b && c) return { numbers: [a, b, c] };
  const [, year, month, day] = compact.exec(plain) ?? [];
  if (year && month && day) return { numbers: [year, month, day] };
  const folded = plain
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '');
  const [, front, name, back] = nameInside.exec(folded) ?? [];
  if (front && name && back) return withMonth(front, name, back, 1);
  const [, first, dayOf, yearOf] = nameFirst.exec(folded) ?? [];
  return first && dayOf && yearOf ? withMonth(dayOf, first, yearOf, 0) : undefined;
}

/**
 * A written date read in one order.
 *
 * @returns days since 1970-01-01; undefined where the order gives no day of the calendar
 * @example dateInOrder({ numbers: ['5', '13', '2024'] }, 'month-first') // 19856
 */
export function dateInOrder({ numbers: [a, b, c], monthAt }: WrittenDate, order: DateOrder): Days | undefined {
  if (monthAt === 0) return days(c, a, b);
  if (a.length > 2) return days(a, b, c);
  if (monthAt === 1) return order === 'year-first' && c.length <= 2 ? days(a, b, c) : days(c, b, a);
  if (order === 'year-first') return days(a, b, c);
  return order === 'day-first' ? days(c, b, a) : days(c, a, b);
}

function withMonth(front: string, name: string, back: string, monthAt: 0 | 1): WrittenDate | undefined {
  const month = monthNames.find(([start]) => name.startsWith(start))?.[1];
  if (month === undefined) return undefined;
  const number = String(month);
  return { numbers: monthAt === 0 ? [number, front, back] : [front, number, back], monthAt };
}

function days(year: string, month: string, day: string): Days | undefined {
  if (year.length !== 4 && year.length !== 2) return undefined;
  if (day.length > 2) return undefined;
  const fullYear = year.length === 2 ? 2000 + Number(year) : Number(year);
  return daysFromCalendar({ year: fullYear, month: Number(month), day: Number(day) });
}
