import { describe, expect, it } from 'vitest';
import { parseDate } from '../../src/intake/date.js';

/** Outside check: the language's own calendar. */
const day = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / 86_400_000;

it.each([
  ['13.05.2024', 'day-first'],
  ['13/5/24', 'day-first'],
  ['13-05-2024', 'day-first'],
  ['13 05 2024', 'day-first'],
  ['13. 05. 2024', 'day-first'],
  ['05/13/2024', 'month-first'],
  ['5-13-24', 'month-first'],
  ['2024-05-13', 'day-first'],
  ['2024/5/13', 'month-first'],
  ['20240513', 'day-first'],
  ['24-05-13', 'year-first'],
] as const)('reads %j, %s', (text, order) => {
  expect(parseDate(text, order)).toBe(day('2024-05-13'));
});

describe('a month by its name, whatever the order of the file', () => {
  it.each([
    '13 May 2024',
    '13-MAY-24',
    '13th May 2024',
    'May 13, 2024',
    'May 13th 2024',
    '13. Mai 2024',
    '13 mai 2024',
    '2024-May-13',
    '13May2024',
  ])('reads %j', (text) => {
    for (const order of ['day-first', 'month-first', 'year-first'] as const) {
      if (order === 'year-first' && text === '13-MAY-24') continue;
      expect(parseDate(text, order)).toBe(day('2024-05-13'));
    }
  });

  it.each([
    ['3. März 2024', '2024-03-03'],
    ['3 mrz 2024', '2024-03-03'],
    ['1er février 2024', '2024-02-01'],
    ['1 août 2024', '2024-08-01'],
    ['1 juin 2024', '2024-06-01'],
    ['1 juillet 2024', '2024-07-01'],
    ['1 déc. 2024', '2024-12-01'],
    ['1. Okt. 2024', '2024-10-01'],
    ['1. Dez 2024', '2024-12-01'],
    ['1 avr 2024', '2024-04-01'],
    ['1 Sept 2024', '2024-09-01'],
    ['1. Jänner 2024', '2024-01-01'],
  ])('reads %j', (text, iso) => {
    expect(parseDate(text, 'day-first')).toBe(day(iso));
  });
});

describe('a time of day behind it', () => {
  it.each([
    '2024-05-13T10:15:00.000Z',
    '2024-05-13T23:59:59+02:00',
    '2024-05-13 00:00',
    '13.05.2024 10:15',
    '13.05.2024, 10:15:33',
    '13/05/2024 10:15 PM',
    '13.05.24 09:30',
  ])('is passed over in %j: the day is the one written', (text) => {
    expect(parseDate(text, 'day-first')).toBe(day('2024-05-13'));
  });
});

it.each([
  '',
  '31.02.2024',
  '32.01.2024',
  '13.13.2024',
  '13.05',
  '2024',
  '45413',
  '13.05-2024',
  '1.5.124',
  'soon',
  '5/2024',
])('refuses %j', (text) => {
  expect(parseDate(text, 'day-first')).toBeUndefined();
});

it('reads the same digits by the order of the file', () => {
  expect(parseDate('03/04/2024', 'day-first')).toBe(day('2024-04-03'));
  expect(parseDate('03/04/2024', 'month-first')).toBe(day('2024-03-04'));
  expect(parseDate('03/04/05', 'year-first')).toBe(day('2003-04-05'));
});
