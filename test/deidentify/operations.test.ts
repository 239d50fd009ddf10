import { describe, expect, it } from 'vitest';
import { dayZeros, eyeKey, type Operation, ranksInYear } from '../../src/deidentify/operations.js';

const days = (date: string): number => Date.parse(date) / 86_400_000;
const operation = (patient: number, eye: string, date: string, procedure?: string): Operation => ({
  patient,
  eye,
  day: days(date),
  procedure,
});
/** Ties in the order in which operations are given. */
const rising = (): ((below: number) => number) => {
  let next = 0;
  return () => next++;
};

describe('ranks in the year', () => {
  it('begin anew each year, whatever the order of the rows', () => {
    const ranks = ranksInYear(
      [
        operation(0, 'right', '2025-02-01'),
        operation(1, 'right', '2024-12-31'),
        operation(2, 'left', '2025-01-02'),
        operation(3, 'left', '2024-01-01'),
      ],
      rising(),
    );
    expect(ranks).toEqual([2, 2, 1, 1]);
  });

  it('of one day follow the random number, not the row', () => {
    const same = [
      operation(0, 'right', '2025-03-03'),
      operation(1, 'right', '2025-03-03'),
      operation(2, 'right', '2025-03-03'),
    ];
    expect(ranksInYear(same, rising())).toEqual([1, 2, 3]);
    let next = 3;
    expect(ranksInYear(same, () => next--)).toEqual([3, 2, 1]);
  });

  it('are one for rows that tell of one operation, and two for both eyes of a day', () => {
    const rows = [
      operation(0, 'right', '2025-03-03'),
      operation(0, 'right', '2025-03-03'),
      operation(0, 'left', '2025-03-03'),
      operation(1, 'left', '2025-03-04'),
    ];
    expect(ranksInYear(rows, rising())).toEqual([1, 1, 2, 3]);
  });
});

describe('day zero', () => {
  it('is the first lens operation of the eye', () => {
    const zeros = dayZeros([
      operation(0, 'right', '2025-05-01'),
      operation(0, 'right', '2024-05-01'),
      operation(0, 'right', '2023-05-01', 'Exchange '),
      operation(0, 'left', '2026-05-01'),
    ]);
    expect(zeros.ofEye(0, 'right')).toBe(days('2024-05-01'));
    expect(zeros.ofEye(0, 'left')).toBe(days('2026-05-01'));
    expect(zeros.ofEye(1, 'left')).toBeUndefined();
    expect(zeros.ofPatient(0)).toBe(days('2024-05-01'));
    expect(zeros.repeated).toBe(1);
  });

  it('of a list that names no eye is that of both', () => {
    const zeros = dayZeros([operation(4, '', '2024-05-01')]);
    expect(zeros.ofEye(4, 'right')).toBe(days('2024-05-01'));
  });
});

// OD and OS: Latin in general use. D beside S or G: common practice, no source.
it.each([
  ['OD', 'right'],
  ['Left', 'left'],
  ['RA', 'right'],
  [' S ', 'left'],
  ['1', '1'],
  ['Both', 'both'],
])('the eye "%s" is compared as %s', (word, key) => {
  expect(eyeKey(word)).toBe(key);
});
