import type { Days } from '../units.js';

/** A day of the Gregorian calendar. */
export interface CalendarDay {
  year: number;
  /** 1 to 12. */
  month: number;
  /** 1 to 31. */
  day: number;
}

const longMonths = [1, 3, 5, 7, 8, 10, 12];

/**
 * Days from 1970-01-01 to a day, by arithmetic alone: no clock, no time zone, no summer time.
 *
 * The year is counted from 1 March, so that the leap day is its last; an era is 400 years, 146,097 days.
 *
 * @returns whole days, negative before 1970; undefined where the month has no such day, or the year is not 1900–2199
 * @source proleptic Gregorian calendar, ISO 8601; checked against a clock in the test
 * @example daysFromCalendar({ year: 2024, month: 3, day: 1 }) // 19783
 */
export function daysFromCalendar({ year, month, day }: CalendarDay): Days | undefined {
  if (year < 1900 || year > 2199 || month < 1 || month > 12) return undefined;
  if (day < 1 || day > daysInMonth(year, month)) return undefined;
  const marchYear = month > 2 ? year : year - 1;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/**
 * The calendar day of a count of days from 1970-01-01; the way back of `daysFromCalendar`.
 *
 * @param days  whole days
 * @source proleptic Gregorian calendar, ISO 8601; checked against a clock in the test
 * @example calendarFromDays(19783) // { year: 2024, month: 3, day: 1 }
 */
export function calendarFromDays(days: Days): CalendarDay {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const leaps = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leaps) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return longMonths.includes(month) ? 31 : 30;
}
