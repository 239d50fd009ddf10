import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalOfLogMAR,
  denominatorOfLogMAR,
  lettersOfLogMAR,
  logMAROfDecimal,
  logMAROfFraction,
  logMAROfLetters,
} from '../../src/acuity/log-mar.js';
import { examples } from '../optics/reference.js';

describe('acuity notation, against vector-examples.json (R 4.2.2)', () => {
  it.each(examples.visual_acuity)('$numerator/$denominator', (example) => {
    const logMAR = logMAROfFraction(example.numerator, example.denominator);
    expect(logMAR).toBeCloseTo(example.logmar, 12);
    expect(decimalOfLogMAR(logMAR)).toBeCloseTo(example.decimal, 12);
    expect(logMAROfDecimal(example.decimal)).toBeCloseTo(example.logmar, 12);
    expect(lettersOfLogMAR(logMAR)).toBeCloseTo(example.etdrs_letters_85_minus_50, 9);
  });

  it('averages logMAR and not decimals', () => {
    const { decimals, mean_logmar, geometric_mean_decimal } = examples.visual_acuity_mean;
    const mean = decimals.reduce((sum, decimal) => sum + logMAROfDecimal(decimal), 0) / decimals.length;
    expect(mean).toBeCloseTo(mean_logmar, 12);
    expect(decimalOfLogMAR(mean)).toBeCloseTo(geometric_mean_decimal, 12);
  });
});

// Visual acuity conversion chart, J Cataract Refract Surg: feet, metres, decimal, logMAR as printed. All 19 rows.
const chart = [
  [10, 3, 2, -0.3],
  [12.5, 3.8, 1.6, -0.2],
  [16, 4.8, 1.25, -0.1],
  [20, 6, 1, 0],
  [25, 7.5, 0.8, 0.1],
  [30, 9, 0.67, 0.18],
  [32, 9.6, 0.63, 0.2],
  [40, 12, 0.5, 0.3],
  [50, 15, 0.4, 0.4],
  [60, 18, 0.33, 0.48],
  [63, 18.9, 0.32, 0.5],
  [70, 21, 0.29, 0.54],
  [80, 24, 0.25, 0.6],
  [100, 30, 0.2, 0.7],
  [114, 34.2, 0.18, 0.76],
  [125, 37.5, 0.16, 0.8],
  [150, 45, 0.13, 0.88],
  [160, 48, 0.13, 0.9],
  [200, 60, 0.1, 1],
] as const;

describe('the conversion chart', () => {
  it.each(chart)('20/%d, 6/%d, decimal %d, logMAR %d', (feet, metres, decimal, printed) => {
    const logMAR = logMAROfFraction(20, feet);
    // Printed to two decimals, and at the nominal tenth for lines of the chart.
    expect(Math.abs(logMAR - printed)).toBeLessThan(0.0051);
    expect(Math.abs(decimalOfLogMAR(logMAR) - decimal)).toBeLessThan(0.0051);
    // The metric column is rounded to a tenth of a metre.
    expect(Math.abs((denominatorOfLogMAR(logMAR, 6) as number) - metres)).toBeLessThan(0.051);
  });
});

it.each([
  [20, 20, 85],
  [20, 40, 69.95],
  [20, 200, 35],
  [20, 400, 19.95],
])('gives %d/%d a score of %d letters (Gregori, Feuer and Rosenfeld)', (above, below, letters) => {
  expect(lettersOfLogMAR(logMAROfFraction(above, below))).toBeCloseTo(letters, 2);
});

// Holladay 2004 prints 20/63 for the mean of 20/20 and 20/200.
it('averages 20/20 and 20/200 to 20/63', () => {
  const mean = (logMAROfFraction(20, 20) + logMAROfFraction(20, 200)) / 2;
  expect(mean).toBeCloseTo(0.5, 12);
  expect(denominatorOfLogMAR(mean, 20)).toBeCloseTo(63.2, 1);
});

// Schulze-Bonsel 2006: decimal 0.014 and 0.005; Lange 2009 prints 0.010 and 0.0052 for 1.98 and 2.28.
it('converts measured low vision as its papers do', () => {
  expect(logMAROfDecimal(0.014)).toBeCloseTo(1.8539, 4);
  expect(logMAROfDecimal(0.005)).toBeCloseTo(2.301, 4);
  expect(decimalOfLogMAR(1.98)).toBeCloseTo(0.0105, 4);
  expect(decimalOfLogMAR(2.28)).toBeCloseTo(0.0052, 4);
});

// The chart notes 20/2000 for counting fingers and 20/20000 for hand movements.
it('reads the fractions that the chart gives to low vision', () => {
  expect(logMAROfFraction(20, 2000)).toBeCloseTo(2, 12);
  expect(logMAROfFraction(20, 20_000)).toBeCloseTo(3, 12);
});

it('steps by a factor of 1.2589 a line', () => {
  expect(decimalOfLogMAR(-0.1)).toBeCloseTo(1.258925, 6);
});

it('gives the same double for a fraction, its decimal and its metric twin', () => {
  expect(logMAROfDecimal(0.5)).toBe(logMAROfFraction(20, 40));
  expect(logMAROfFraction(6, 12)).toBe(logMAROfFraction(20, 40));
  expect(logMAROfDecimal(0.8)).toBe(logMAROfFraction(20, 25));
  expect(Object.is(logMAROfDecimal(1), 0)).toBe(true);
  expect(Object.is(logMAROfFraction(6, 6), 0)).toBe(true);
});

it('returns from letters and decimals to the same logMAR', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.31, max: 3.01, noNaN: true }), (logMAR) => {
      expect(logMAROfLetters(lettersOfLogMAR(logMAR))).toBeCloseTo(logMAR, 12);
      expect(logMAROfDecimal(decimalOfLogMAR(logMAR))).toBeCloseTo(logMAR, 12);
      expect(logMAROfFraction(20, denominatorOfLogMAR(logMAR, 20))).toBeCloseTo(logMAR, 12);
    }),
  );
});

it('finds no acuity in zero or below', () => {
  expect(logMAROfDecimal(0)).toBeNaN();
  expect(logMAROfDecimal(-1)).toBeNaN();
  expect(logMAROfFraction(0, 20)).toBeNaN();
});
