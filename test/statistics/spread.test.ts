import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootMeanSquare, standardDeviation } from '../../src/statistics/spread.js';
import { referencePresent } from '../shared-reference.js';
import { opticsErrors, single } from './made-up-eyes.js';
import { agrees, example } from './reference-examples.js';

/** t(4) at 0.975 (SciPy 1.17.1, t.ppf). */
const t4 = 2.7764451051977934;

// Made-up eyes of `cluster-mean-icc` (shared/reference/stat-examples.json), 12 patients; intervals as printed on the
// statistics page under "Check values".
describe.skipIf(!referencePresent)('the check values of the statistics page', () => {
  const read = (): [Float64Array, Int32Array] => {
    const { input } = example('cluster-mean-icc');
    return [Float64Array.from(input.y), Int32Array.from(input.patient)];
  };

  it('SD 0.475619, 0.302327439965 to 0.748239889567', () => {
    const found = standardDeviation(...read(), 0.95);
    expect(found.value).toBeCloseTo(0.475619, 6);
    expect(found.low).toBeCloseTo(0.302327439965, 12);
    expect(found.high).toBeCloseTo(0.748239889567, 12);
    expect(found).toMatchObject({ n: 19, patients: 12, method: 'log-jackknife-t', notes: [] });
  });

  it('the estimate itself is that of base R', () => {
    const { expected, tolerance } = example('bootstrap-patient-deterministic');
    expect(agrees(standardDeviation(...read(), 0.95).value, expected.sd.theta, tolerance)).toBe(true);
  });
});

describe.skipIf(!referencePresent)('standardDeviation', () => {
  it('has divisor n − 1: NIST GEAR, and the first group of Wilcox, in R 4.2.2', () => {
    const gear = example('variance-nist-gear');
    const diameters = Float64Array.from(gear.input.groups.flat());
    expect(agrees(standardDeviation(diameters, single(100), 0.95).value, gear.expected.sd, gear.tolerance)).toBe(true);
    const { input, expected, tolerance } = example('trim-selfawareness');
    const found = standardDeviation(Float64Array.from(input.x), single(input.x.length), 0.95);
    expect(agrees(found.value, expected.sd, tolerance)).toBe(true);
  });

  it('of the peak-flow differences of Bland and Altman 1986', () => {
    const { input, expected, tolerance } = example('bland-altman-pefr');
    const differences = Float64Array.from(input.w1, (w: number, i: number) => w - input.m1[i]);
    expect(agrees(standardDeviation(differences, single(17), 0.95).value, expected.sd_difference, tolerance)).toBe(
      true,
    );
  });
});

// Optics page section 5, ids 5.sd and 5.rmse.
it('gives SD and RMS of the 20 prediction errors', () => {
  expect(standardDeviation(opticsErrors, single(20), 0.95).value).toBeCloseTo(0.7142563302, 10);
  expect(rootMeanSquare(opticsErrors, single(20), 0.95).value).toBeCloseTo(0.7003070755, 10);
});

describe('interval of the SD, worked by hand', () => {
  it('leaves out each patient and takes logarithms', () => {
    // SDs of −1 −1 1 1 0 without each in turn, by the definition of the SD.
    const values = [-1, -1, 1, 1, 0];
    const logs = values.map((_, out) => {
      const left = values.filter((_, i) => i !== out);
      const mean = left.reduce((sum, v) => sum + v, 0) / 4;
      return Math.log(Math.sqrt(left.reduce((sum, v) => sum + (v - mean) ** 2, 0) / 3));
    });
    const mean = logs.reduce((sum, v) => sum + v, 0) / 5;
    const jackknife = (4 / 5) * logs.reduce((sum, v) => sum + (v - mean) ** 2, 0);
    const floor = 1 / (2 * 4);
    const found = standardDeviation(Float64Array.from(values), single(5), 0.95);
    expect(jackknife).toBeLessThan(floor);
    expect(found.value).toBe(1);
    expect(found.high).toBeCloseTo(Math.exp(t4 * Math.sqrt(floor)), 12);
  });

  it('both eyes equal: the floor has the correlation 1, (1 + (2 − 1)·1²)/(2·9), where the jackknife is smaller', () => {
    const values = Float64Array.of(-1, -1, -1, -1, 1, 1, 1, 1, 0, 0);
    const found = standardDeviation(values, Int32Array.of(1, 1, 2, 2, 3, 3, 4, 4, 5, 5), 0.95);
    const sd = Math.sqrt(8 / 9);
    expect(found.value).toBeCloseTo(sd, 14);
    expect(found.high).toBeCloseTo(sd * Math.exp(t4 * Math.sqrt(2 / 18)), 12);
  });

  it('fellow eyes cancelling: a negative correlation counts as 0, the floor is 1/(2(n − 1))', () => {
    // Every patient is ±1, so the SD without any one is the same and the jackknife is 0.
    const values = Float64Array.of(1, -1, 1, -1, 1, -1, 1, -1, 1, -1);
    const found = standardDeviation(values, Int32Array.of(1, 1, 2, 2, 3, 3, 4, 4, 5, 5), 0.95);
    const sd = Math.sqrt(10 / 9);
    expect(found.low).toBeCloseTo(sd * Math.exp(-t4 / Math.sqrt(18)), 12);
  });

  it('one pair among singles leaves the estimate when its patient does', () => {
    const values = [3, 1, -2, 0, 2, -4];
    const patients = [1, 1, 2, 3, 4, 5];
    const logs = [1, 2, 3, 4, 5].map((out) => {
      const left = values.filter((_, i) => patients[i] !== out);
      const mean = left.reduce((sum, v) => sum + v, 0) / left.length;
      return Math.log(left.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (left.length - 1)) / 2;
    });
    const mean = logs.reduce((sum, v) => sum + v, 0) / 5;
    const jackknife = (4 / 5) * logs.reduce((sum, v) => sum + (v - mean) ** 2, 0);
    const found = standardDeviation(Float64Array.from(values), Int32Array.from(patients), 0.95);
    // Mean 0; MSB = (16/2 + 4 + 0 + 4 + 16)/4 = 8, MSW = 2, m₀ = (6 − 8/6)/4 = 7/6; Σm²/n = 4/3.
    const icc = (8 - 2) / (8 + 2 / 6);
    const floor = (1 + (icc * icc) / 3) / 10;
    expect(found.high).toBeCloseTo(Math.sqrt(34 / 5) * Math.exp(t4 * Math.sqrt(Math.max(jackknife, floor))), 12);
  });
});

describe('rootMeanSquare', () => {
  it('is √(Σy²/n), and counts a mean error that the SD leaves out', () => {
    const values = Float64Array.of(1.1, 0.9, 1, 1.2, 0.8);
    expect(rootMeanSquare(values, single(5), 0.95).value).toBeCloseTo(Math.sqrt(5.1 / 5), 14);
    // RMSE² = ME² + SD²(n − 1)/n (standards page, section 3.2).
    const sd = standardDeviation(values, single(5), 0.95).value as number;
    expect(rootMeanSquare(values, single(5), 0.95).value).toBeCloseTo(Math.sqrt(1 + (sd * sd * 4) / 5), 14);
  });

  it('leaves out each patient by the definition', () => {
    const values = [9, -1, 1, 2, -1, 1];
    const patients = [1, 1, 2, 3, 4, 5];
    const logs = [1, 2, 3, 4, 5].map((out) => {
      const left = values.filter((_, i) => patients[i] !== out);
      return Math.log(left.reduce((sum, v) => sum + v * v, 0) / left.length) / 2;
    });
    const mean = logs.reduce((sum, v) => sum + v, 0) / 5;
    const jackknife = (4 / 5) * logs.reduce((sum, v) => sum + (v - mean) ** 2, 0);
    const found = rootMeanSquare(Float64Array.from(values), Int32Array.from(patients), 0.95);
    expect(jackknife).toBeGreaterThan(0.2);
    expect(found.high).toBeCloseTo(Math.sqrt(89 / 6) * Math.exp(t4 * Math.sqrt(jackknife)), 12);
  });
});

describe('spread, edges', () => {
  it('one eye has a root mean square and no SD', () => {
    const sd = standardDeviation(Float64Array.of(2), single(1), 0.95);
    expect(sd.value).toBeUndefined();
    expect(sd.notes).toContain('not-estimable:one-eye');
    expect(rootMeanSquare(Float64Array.of(-2), single(1), 0.95)).toMatchObject({
      value: 2,
      low: undefined,
      notes: ['not-estimable:few-patients'],
    });
  });

  it('without eyes there is neither', () => {
    for (const spread of [standardDeviation, rootMeanSquare]) {
      expect(spread(new Float64Array(), single(0), 0.95)).toMatchObject({
        value: undefined,
        n: 0,
        notes: ['not-estimable:no-eyes'],
      });
    }
  });

  it('equal values have an SD of 0 and no interval; nor have values that one patient alone varies', () => {
    expect(standardDeviation(new Float64Array(6).fill(0.25), single(6), 0.95)).toMatchObject({
      value: 0,
      low: undefined,
      notes: ['few-patients', 'not-estimable:no-spread'],
    });
    const lone = standardDeviation(Float64Array.of(1, 1, 1, 1, 1, 4), single(6), 0.95);
    expect(lone.low).toBeUndefined();
    expect(lone.notes).toContain('not-estimable:one-patient-varies');
  });

  it('marks heavy tails from an excess kurtosis above 2', () => {
    // Nine zeros and one 1: m₄/m₂² = (0.1·0.9⁴ + 0.9·0.1⁴)/0.09² = 8.11; a two-point cloud has −2.
    const heavy = Float64Array.of(0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, -0.1, 0.1, 5);
    expect(standardDeviation(heavy, single(10), 0.95).notes).toEqual(['heavy-tails']);
    expect(standardDeviation(heavy.map(Math.sign), single(10), 0.95).notes).toEqual([]);
  });

  it('refuses missing values and a confidence in percent', () => {
    expect(() => standardDeviation(Float64Array.of(Number.NaN), single(1), 0.95)).toThrow(RangeError);
    expect(() => rootMeanSquare(Float64Array.of(1), single(1), 95)).toThrow('rootMeanSquare: confidence is 95');
  });

  it('does not move with a shift, grows with a scale, and does not depend on the order of eyes', () => {
    const eyes = fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: -40, max: 40 })), {
      minLength: 12,
      maxLength: 40,
    });
    fc.assert(
      fc.property(eyes, (rows) => {
        const of = (list: typeof rows, value: (v: number) => number) =>
          standardDeviation(
            Float64Array.from(list, ([, v]) => value(v / 8)),
            Int32Array.from(list, ([patient]) => patient),
            0.95,
          );
        const plain = of(rows, (v) => v);
        const moved = of(rows.toReversed(), (v) => 2 * v + 1);
        if (plain.low === undefined || plain.high === undefined) {
          expect(moved.low).toBeUndefined();
          return;
        }
        expect(moved.low).toBeCloseTo(2 * plain.low, 9);
        // An interval from few patients can be very wide: compared relatively.
        expect((moved.high as number) / plain.high).toBeCloseTo(2, 9);
      }),
    );
  });
});
