import fc from 'fast-check';
import { expect, it } from 'vitest';
import { count, fixed, numberStyles, shortest, signed } from '../../src/format/number.js';
import { round } from '../../src/format/round.js';
import { parseNumber } from '../../src/intake/number.js';

it('sets published numbers with a true minus sign, and never "−0.00"', () => {
  expect(fixed(-0.125, 2)).toBe('\u22120.13');
  expect(fixed(-0.004, 2)).toBe('0.00');
  expect(fixed(1.005, 2)).toBe('1.01');
  expect(fixed(2, 0)).toBe('2');
});

it('sets numbers for files with a hyphen, and a decimal comma where that is asked for', () => {
  expect(fixed(-1.5, 2, numberStyles.filePoint)).toBe('-1.50');
  expect(fixed(-1.5, 2, numberStyles.fileComma)).toBe('-1,50');
  expect(fixed(-1.5, 2, numberStyles.typesetComma)).toBe('\u22121,50');
});

it('shows the sign of a refraction, but none on a zero', () => {
  expect(signed(0.5, 2)).toBe('+0.50');
  expect(signed(-0.5, 2)).toBe('\u22120.50');
  expect(signed(0.001, 2)).toBe('0.00');
});

it.each([
  [7, '7'],
  [999, '999'],
  [2911, '2,911'],
  [1234567, '1,234,567'],
])('sets a count of %d as %s', (value, text) => {
  expect(count(value)).toBe(text);
});

it('sets counts apart as the language does, and not at all in files', () => {
  expect(count(2911, numberStyles.typesetComma)).toBe('2.911');
  expect(count(2911, numberStyles.filePoint)).toBe('2911');
});

it('is read back by the parser of written numbers, in every style', () => {
  const styles = Object.values(numberStyles);
  fc.assert(
    fc.property(
      fc.double({ min: -1000, max: 1000, noNaN: true }),
      fc.integer({ min: 0, max: 6 }),
      fc.constantFrom(...styles),
      (value, decimals, style) => {
        const decimal = style.mark === '.' ? 'point' : 'comma';
        expect(parseNumber(fixed(value, decimals, style), { decimal })).toBe(round(value, decimals));
      },
    ),
  );
});

it('writes the shortest text that reads back to the same double', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(Number(shortest(value)) - value).toBe(0);
    }),
  );
  expect(shortest(0.1 + 0.2)).toBe('0.30000000000000004');
  expect(shortest(-0)).toBe('0');
  expect(shortest(undefined)).toBe('');
});

it('refuses what is no number', () => {
  expect(() => fixed(Number.NaN, 2)).toThrow('fixed: NaN; expected a finite number');
  expect(() => signed(Number.NaN, 2)).toThrow('signed: NaN; expected a finite number');
  expect(() => shortest(Number.POSITIVE_INFINITY)).toThrow('shortest: Infinity; expected a finite number');
  expect(() => count(1.5)).toThrow('count: 1.5; expected a whole number from 0');
});
