import { describe, expect, it } from 'vitest';
import { bookRows, codesOf, extendedBook, newCodeBook, readCodeBook } from '../../src/deidentify/code-book.js';
import { splitDate } from '../../src/intake/date.js';
import { headerIdentifier } from '../../src/intake/identifier-header.js';
import { valueIdentifier } from '../../src/intake/identifiers.js';

/** Numbers that are written down beforehand, over and over. */
function drawFrom(numbers: readonly number[]): (below: number) => number {
  let at = 0;
  return (below) => (numbers[at++ % numbers.length] as number) % below;
}

const patient = (written: string) => ({ kind: 'patient', written }) as const;

describe('a code book', () => {
  it('is read as it was written', () => {
    const book = extendedBook(
      newCodeBook(drawFrom([1, 2, 3])),
      [patient('007'), { kind: 'surgeon', written: 'Dr X' }],
      drawFrom([5, 9, 27, 0, 3]),
    );
    expect(readCodeBook(bookRows(book))).toEqual(book);
  });

  it('knows a number whatever blanks stand in it, and leading zeros tell numbers apart', () => {
    const book = extendedBook(
      newCodeBook(drawFrom([1])),
      [patient('00 71'), patient('71')],
      drawFrom([4, 8, 15, 16, 23]),
    );
    const codeOf = codesOf(book);
    expect(codeOf('patient', ' 0071 ')).toBe(book.entries[0]?.code);
    expect(codeOf('patient', '71')).toBe(book.entries[1]?.code);
    expect(codeOf('patient', '071')).toBeUndefined();
    expect(codeOf('surgeon', '71')).toBeUndefined();
  });

  it('draws again where a code is taken: no two patients are one', () => {
    const book = extendedBook(
      newCodeBook(drawFrom([0])),
      [patient('a'), patient('b')],
      drawFrom([...Array(14).fill(0), ...Array(7).fill(1)]),
    );
    expect(book.entries.map(({ code }) => code)).toEqual(['P2222222', 'P3333333']);
  });

  it('keeps the lines it has, and adds each patient once', () => {
    const first = extendedBook(
      newCodeBook(drawFrom([3])),
      [patient('a'), patient('a'), patient('a ')],
      drawFrom([1, 2, 3]),
    );
    const second = extendedBook(first, [patient('b'), patient('a')], drawFrom([7, 8, 9]));
    expect(first.entries).toHaveLength(1);
    expect(second.entries.slice(0, 1)).toEqual(first.entries);
    expect(second.entries.map(({ written }) => written)).toEqual(['a', 'b']);
  });

  it('gives codes that the gate lets pass and that are no dates', () => {
    let state = 1;
    // A generator that is enough for a test: Lehmer 1951, modulus 2³¹ − 1, multiplier 48271.
    const draw = (below: number): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state % below;
    };
    const book = extendedBook(
      newCodeBook(draw),
      Array.from({ length: 2000 }, (_, at) => patient(`n${at}`)),
      draw,
    );
    const words = book.entries.map(({ code }) => code);
    expect(new Set(words).size).toBe(2000);
    expect(valueIdentifier({ words, field: 'patient' })).toBeUndefined();
    expect(words.filter((word) => splitDate(word) !== undefined)).toEqual([]);
    expect(headerIdentifier('patient')).toBeUndefined();
  });
});
