import { calendarFromDays, daysFromCalendar } from '../intake/calendar.js';
import type { Days } from '../units.js';

/** Ages from here on are one class. @source 45 CFR 164.514(b)(2)(i)(C): all ages over 89 */
const oldest = 90;

/**
 * Age in whole years on a day: the years since birth, less one where the birthday of that year is still to come.
 *
 * @param birth  days since 1970-01-01
 * @param day    days since 1970-01-01
 * @returns undefined where the day lies before the birth
 * @source the calendar; worked by hand in the test
 * @example ageOn(-7979, 20089) // born 1948-02-27, on 2025-01-01: 76
 */
export function ageOn(birth: Days, day: Days): number | undefined {
  if (day < birth) return undefined;
  const from = calendarFromDays(birth);
  const to = calendarFromDays(day);
  const isToCome = to.month < from.month || (to.month === from.month && to.day < from.day);
  return to.year - from.year - (isToCome ? 1 : 0);
}

/**
 * A birth that a two-digit year put into this century, a hundred years back where it would lie after the operation.
 *
 * @returns undefined where that year has no such day: 29 February 1900
 * @example birthBefore(28488, 20089) // 2048-01-01 becomes 1948-01-01: -8036
 */
export function birthBefore(birth: Days, surgery: Days): Days | undefined {
  if (birth <= surgery) return birth;
  const { year, month, day } = calendarFromDays(birth);
  return daysFromCalendar({ year: year - 100, month, day });
}

/**
 * An age as it may leave the clinic: whole years, and one class from 90 on.
 *
 * @param years  from 0
 * @example ageText(93.4) // '90+'
 */
export function ageText(years: number): string {
  return years >= oldest ? `${oldest}+` : String(Math.floor(years));
}
