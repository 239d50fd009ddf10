import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { round } from '../../src/format/round.js';

// Decimals on paper; toFixed and Math.round of the language get each of the first four wrong.
it.each([
  [1.005, 2, 1.01],
  [-0.004, 2, 0],
  [-2.5, 0, -3],
  [-0.125, 2, -0.13],
  [0.125, 2, 0.13],
  [2.5, 0, 3],
  [1.115, 2, 1.12],
  [8.345, 2, 8.35],
  [0.615, 2, 0.62],
  [10.235, 2, 10.24],
  [179.7, 0, 180],
  [0.3, 0, 0],
  [45.1234565, 6, 45.123457],
  [123456789.125, 2, 123456789.13],
  [0.1 + 0.2, 6, 0.3],
])('rounds %d to %d decimals as %d', (value, decimals, rounded) => {
  expect(Object.is(round(value, decimals), rounded)).toBe(true);
});

// Both ±0.125 D belong to the centre band −0.13 to +0.13 of the published bands.
it('treats both signs alike', () => {
  expect(Math.abs(round(-0.125, 2))).toBe(round(0.125, 2));
  expect(round(0.125, 2)).toBeLessThanOrEqual(0.13);
});

describe('against long division on whole numbers', () => {
  /** Half away from zero on the decimal digits themselves, by BigInt: nothing binary in it. */
  function onPaper(digits: bigint, places: number, decimals: number): number {
    const drop = 10n ** BigInt(places - decimals);
    const size = digits < 0n ? -digits : digits;
    const whole = (2n * size + drop) / (2n * drop);
    return Number(`${digits < 0n ? '-' : ''}${whole}e-${decimals}`);
  }

  it('rounds any decimal of up to ten digits as on paper', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -9_999_999_999n, max: 9_999_999_999n }),
        fc.integer({ min: 0, max: 7 }),
        fc.integer({ min: 0, max: 7 }),
        (digits, a, b) => {
          const [decimals, places] = [Math.min(a, b), Math.max(a, b)];
          const value = Number(`${digits}e-${places}`);
          expect(round(value, decimals) - onPaper(digits, places, decimals)).toBe(0);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

it('lets a missing value stay missing, and numbers without such decimals as they are', () => {
  expect(round(Number.NaN, 2)).toBeNaN();
  expect(round(1e20, 2)).toBe(1e20);
  expect(round(Number.NEGATIVE_INFINITY, 2)).toBe(Number.NEGATIVE_INFINITY);
});

it.each([-1, 1.5, 16, Number.NaN])('refuses %d decimals', (decimals) => {
  expect(() => round(1, decimals)).toThrow(/^round: .* expected a whole number from 0 to 15$/);
});
