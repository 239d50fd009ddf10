import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineOfLogMAR, linesGained } from '../../src/acuity/lines.js';
import { logMAROfDecimal, logMAROfFraction, logMAROfLetters } from '../../src/acuity/log-mar.js';

/** Denominators of the standard lines, 20/10 to 20/200: steps of a tenth of a log unit, as charts are named. */
const standard = [10, 12.5, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200];
const exact = standard.map((denominator) => logMAROfFraction(20, denominator));

describe('the line an acuity reaches', () => {
  it('is the nominal one for every line of the chart', () => {
    expect(exact.map(lineOfLogMAR)).toEqual([-3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  // −log10(0.5) is 0.30103: a bare comparison with 0.30 would lose every eye recorded at exactly 20/40.
  it('counts decimal 0.5, 6/12, 20/40 and 70 letters as 20/40 or better', () => {
    for (const logMAR of [
      logMAROfDecimal(0.5),
      logMAROfFraction(6, 12),
      logMAROfFraction(20, 40),
      logMAROfLetters(70),
    ]) {
      expect(lineOfLogMAR(logMAR)).toBe(3);
    }
    expect(logMAROfDecimal(0.5) <= 0.3).toBe(false);
  });

  it('keeps 20/30 out of the class of 20/25, and 69 letters out of that of 20/40', () => {
    expect(lineOfLogMAR(logMAROfFraction(20, 30))).toBe(2);
    expect(lineOfLogMAR(logMAROfLetters(69))).toBe(4);
  });

  it('has its edge at the nominal tenth + 0.005, the edge included', () => {
    expect(lineOfLogMAR(0.305)).toBe(3);
    expect(lineOfLogMAR(0.305001)).toBe(4);
    expect(lineOfLogMAR(0.1 + 0.2 + 0.005)).toBe(3);
    expect(Object.is(lineOfLogMAR(-0.02), 0)).toBe(true);
    expect(lineOfLogMAR(Number.NaN)).toBeNaN();
  });
});

describe('lines gained and lost', () => {
  it.each([
    [0.0499, 0],
    [0.05, 1],
    [0.1899, 1],
    [0.19, 2],
    [0.2899, 2],
    [0.29, 3],
    [0.39, 4],
    [-0.0499, 0],
    [-0.05, -1],
    [-0.1899, -1],
    [-0.19, -2],
    [-0.29, -3],
  ])('a change of %d logMAR is %d lines', (gain, lines) => {
    expect(linesGained(gain)).toBe(lines);
  });

  it('counts every step of the standard chart as the number of its lines, gained or lost', () => {
    for (const [from, before] of exact.entries()) {
      for (const [to, after] of exact.entries()) expect(linesGained(before - after)).toBe(from === to ? 0 : from - to);
    }
  });

  // Nine letters of five a line are 0.18, ten are 0.20.
  it('does not count nine letters as two lines', () => {
    expect(linesGained(logMAROfLetters(76) - logMAROfLetters(85))).toBe(1);
    expect(linesGained(logMAROfLetters(75) - logMAROfLetters(85))).toBe(2);
  });

  it('treats gain and loss alike, and has no −0', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3.3, noNaN: true }), (size) => {
        expect(linesGained(-size)).toBe(linesGained(size) === 0 ? 0 : -linesGained(size));
      }),
    );
    expect(Object.is(linesGained(-0.01), 0)).toBe(true);
    expect(linesGained(Number.NaN)).toBeNaN();
  });
});
