import { describe, expect, it } from 'vitest';
import { isAtOrBetter, isWithin } from '../../src/statistics/within.js';
import { opticsErrors } from './made-up-eyes.js';

// Optics page section 5, ids 5.within.* and 5.naive.*: a bare <= loses the eye 0.54 − 0.29.
describe('isWithin', () => {
  it.each([
    [0.25, 8, 7],
    [0.5, 14, 14],
    [0.75, 16, 16],
    [1.0, 18, 18],
    [1.5, 19, 19],
    [2.0, 20, 20],
  ])('counts the 20 errors within ±%d as %d; a bare comparison counts %d', (limit, count, naive) => {
    expect(opticsErrors.filter((error) => isWithin(error, limit)).length).toBe(count);
    expect(opticsErrors.filter((error) => Math.abs(error) <= limit).length).toBe(naive);
  });

  // Found by exhaustive search on the optics page, section 5.
  it.each([
    [0.54 - 0.29, 0.25],
    [0.55 - 0.3, 0.25],
    [0.75 - 0.17 - 1.08, 0.5],
    [1 - 0.17 - 1.33, 0.5],
    [-3.98 + 4.48, 0.5],
  ])('takes %d as within %d, as it is on paper', (error, limit) => {
    expect(Math.abs(error) > limit).toBe(true);
    expect(isWithin(error, limit)).toBe(true);
    expect(isWithin(-error, limit)).toBe(true);
  });

  it('includes the limit and leaves 0.504 outside 0.50', () => {
    expect(isWithin(0.5, 0.5)).toBe(true);
    expect(isWithin(0.504, 0.5)).toBe(false);
    expect(isWithin(0.500001, 0.5)).toBe(false);
    expect(isWithin(0.5000004, 0.5)).toBe(true);
  });

  it('refuses what is not a number, and a negative limit', () => {
    expect(() => isWithin(Number.NaN, 0.5)).toThrow('isWithin: the value is NaN; expected a number');
    expect(() => isWithin(0, -0.5)).toThrow('isWithin: limit -0.5; expected 0 or above');
  });
});

describe('isAtOrBetter', () => {
  // Standards page, check 67: decimal 0.5 is logMAR 0.30103, and 20/40 counts as 20/40 or better (cut 0.30 + 0.005).
  it('takes 20/40 as at the line 20/40, and 20/50 as not', () => {
    expect(isAtOrBetter(-Math.log10(20 / 40), 0.305)).toBe(true);
    expect(isAtOrBetter(-Math.log10(20 / 50), 0.305)).toBe(false);
  });

  it('keeps the sign: −0.30 is better than 0.30', () => {
    expect(isAtOrBetter(-0.3, 0.3)).toBe(true);
    expect(isAtOrBetter(0.3, -0.3)).toBe(false);
    expect(isAtOrBetter(0.1 + 0.2, 0.3)).toBe(true);
  });

  it('refuses what is not a number', () => {
    expect(() => isAtOrBetter(Number.NaN, 0.3)).toThrow('isAtOrBetter: the value is NaN; expected a number');
  });
});
