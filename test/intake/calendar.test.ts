import { expect, it } from 'vitest';
import { calendarFromDays, daysFromCalendar } from '../../src/intake/calendar.js';

const msPerDay = 86_400_000;

// Outside check: the language's own proleptic Gregorian calendar (ECMA-262, Date.UTC).
it('agrees with the calendar of the language on every day from 1900 to 2199, both ways', () => {
  const first = Date.UTC(1900, 0, 1) / msPerDay;
  const last = Date.UTC(2199, 11, 31) / msPerDay;
  for (let days = first; days <= last; days += 1) {
    const date = new Date(days * msPerDay);
    const day = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
    if (daysFromCalendar(day) !== days) expect({ ...day, days: daysFromCalendar(day) }).toEqual({ ...day, days });
    if (calendarFromDays(days).day !== day.day) expect(calendarFromDays(days)).toEqual(day);
  }
  expect(calendarFromDays(last)).toEqual({ year: 2199, month: 12, day: 31 });
});

it('knows the leap years', () => {
  const years = [2023, 2024, 1900, 2000, 2100];
  const hasLeapDay = (year: number) => daysFromCalendar({ year, month: 2, day: 29 }) !== undefined;
  expect(years.filter(hasLeapDay)).toEqual([2024, 2000]);
});

it.each([
  [2023, 2, 29],
  [2024, 4, 31],
  [2024, 13, 1],
  [2024, 0, 1],
  [2024, 1, 0],
  [1899, 12, 31],
  [2200, 1, 1],
])('has no day %d-%d-%d', (year, month, day) => {
  expect(daysFromCalendar({ year, month, day })).toBeUndefined();
});
