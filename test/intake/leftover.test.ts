import { describe, expect, it } from 'vitest';
import { isShortDate, type Leftover, leftoverOf } from '../../src/intake/leftover.js';

// What spreadsheets show in place of what was typed: common practice, no source.
describe('what a spreadsheet has made of a cell', () => {
  it.each<[string, Leftover | undefined]>([
    ['06-Sep', 'date'],
    ['Sep-06', 'date'],
    ['01. Mai', 'date'],
    ['1-févr', 'date'],
    ['2025-05-01', 'date'],
    ['1E+05', 'exponent'],
    ['-1,25E-02', 'exponent'],
    ['#DIV/0!', 'error'],
    ['#N/A', 'error'],
    ['#NV', 'error'],
    ['#VALEUR!', 'error'],
    ['Err:502', 'error'],
    ['####', 'narrow'],
    ['2,350', 'grouped'],
    ['2.350,5', 'grouped'],
    ['2 350', 'grouped'],
    ['2\u202f350', 'grouped'],
    ['1’234’567', 'grouped'],
    ['x', undefined],
    ['6-9', undefined],
    ['#5', undefined],
    ['2,35', undefined],
    ['12 3456', undefined],
    ['45708', undefined],
  ])('in a column of numbers, %j: %s', (text, leftover) => {
    expect(leftoverOf(text, 'number')).toBe(leftover);
  });

  // 45708 days from the first day of 1900 by the spreadsheets' count is 2025-02-20; 14610 lies before 1940.
  it.each<[string, Leftover | undefined]>([
    ['45708', 'serial'],
    ['45708.75', 'serial'],
    ['45708,75', 'serial'],
    ['14610', undefined],
    ['73051', undefined],
    ['########', 'narrow'],
    ['06-Sep', undefined],
  ])('in a column of dates, %j: %s', (text, leftover) => {
    expect(leftoverOf(text, 'date')).toBe(leftover);
  });

  it.each<[string, Leftover | undefined]>([
    ['1.2E+11', 'exponent'],
    ['1,2E+11', 'exponent'],
    ['2E5', undefined],
    ['12E+11', undefined],
    ['#REF!', 'error'],
    ['##', 'narrow'],
    ['06-Sep', undefined],
    ['P0001', undefined],
  ])('in a column of codes, %j: %s', (text, leftover) => {
    expect(leftoverOf(text, 'word')).toBe(leftover);
  });

  it('knows the months of three languages', () => {
    const short =
      'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec Mär Mai Okt Dez févr avr juin juil août déc mars'.split(' ');
    expect(short.filter((month) => !isShortDate(`06-${month}`) || !isShortDate(`${month}-06`))).toEqual([]);
    expect(['06-Abc', '6/9', 'May', '123-May'].filter(isShortDate)).toEqual([]);
  });
});
