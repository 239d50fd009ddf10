import { expect, it } from 'vitest';
import { ageOn, ageText, birthBefore } from '../../src/deidentify/age.js';

/** Days since 1970-01-01 by the clock of the language, which the project does not use. */
const days = (date: string): number => Date.parse(date) / 86_400_000;

// Birthdays counted on the calendar: § 187 and § 188 BGB complete a year at the end of the day before.
it.each([
  ['1948-02-27', '2025-02-26', 76],
  ['1948-02-27', '2025-02-27', 77],
  ['1952-02-29', '2025-02-28', 72],
  ['1952-02-29', '2025-03-01', 73],
  ['1952-02-29', '2024-02-29', 72],
  ['2025-01-01', '2025-01-01', 0],
])('somebody born on %s is on %s %i years old', (birth, day, years) => {
  expect(ageOn(days(birth), days(day))).toBe(years);
});

it('nobody is operated on before birth', () => {
  expect(ageOn(days('2025-01-02'), days('2025-01-01'))).toBeUndefined();
});

it('a birth of a two-digit year lies in the century before the operation', () => {
  expect(birthBefore(days('2048-05-13'), days('2025-01-01'))).toBe(days('1948-05-13'));
  expect(birthBefore(days('2010-05-13'), days('2025-01-01'))).toBe(days('2010-05-13'));
  // 1900 was no leap year.
  expect(birthBefore(days('2000-02-29'), days('1999-01-01'))).toBeUndefined();
});

// 45 CFR 164.514(b)(2)(i)(C): ages over 89 may only be given as one category of age 90 or older.
it.each([
  [0, '0'],
  [89, '89'],
  [89.9, '89'],
  [90, '90+'],
  [104, '90+'],
])('%d years leave the clinic as %s', (years, text) => {
  expect(ageText(years)).toBe(text);
});
