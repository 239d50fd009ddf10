import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanAbsolute, medianAbsolute } from '../../src/statistics/absolute-error.js';
import { atOrBelow, median } from '../../src/statistics/median.js';
import { rootMeanSquare, standardDeviation } from '../../src/statistics/spread.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

/** Patients 1 … n, one eye each. */
const single = (n: number): Int32Array => Int32Array.from({ length: n }, (_, i) => i);
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

  it('MAE 0.4005263, 0.251508515274 to 0.637836573705', () => {
    const found = meanAbsolute(...read(), 0.95);
    expect(found.value).toBeCloseTo(0.4005263, 7);
    expect(found.low).toBeCloseTo(0.251508515274, 12);
    expect(found.high).toBeCloseTo(0.637836573705, 12);
    expect(found).toMatchObject({ n: 19, patients: 12, method: 'log-patient-t', notes: [] });
  });

  it('MedAE 0.37, 0.2432025929 to 0.5067974071', () => {
    const found = medianAbsolute(...read(), 0.95);
    expect(found.value).toBeCloseTo(0.37, 12);
    expect(found.low).toBeCloseTo(0.2432025929, 10);
    expect(found.high).toBeCloseTo(0.5067974071, 10);
    expect(found).toMatchObject({ n: 19, patients: 12, method: 'rank-effective-n', notes: [] });
  });

  it('the three estimates themselves are those of base R', () => {
    const { expected, tolerance } = example('bootstrap-patient-deterministic');
    expect(agrees(standardDeviation(...read(), 0.95).value, expected.sd.theta, tolerance)).toBe(true);
    expect(agrees(meanAbsolute(...read(), 0.95).value, expected.mae.theta, tolerance)).toBe(true);
    expect(agrees(medianAbsolute(...read(), 0.95).value, expected.medae.theta, tolerance)).toBe(true);
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

// Optics page section 5, ids 5.sd, 5.mae, 5.medae, 5.rmse: the 20 prediction errors, computed in R and in Python.
it('gives SD, MAE, MedAE and RMS of the 20 prediction errors', () => {
  const errors = Float64Array.of(
    ...[-0.5, 0.25, 0.12, -0.31, 0.54 - 0.29, -0.87, 1.0, 0.05, -0.02, 0.37],
    ...[-0.62, 0.75, 0.18, -0.44, 0.5, -1.37, 0.08, -0.19, 2.0, 0.29],
  );
  expect(standardDeviation(errors, single(20), 0.95).value).toBeCloseTo(0.7142563302, 10);
  expect(meanAbsolute(errors, single(20), 0.95).value).toBeCloseTo(0.508, 10);
  expect(medianAbsolute(errors, single(20), 0.95).value).toBeCloseTo(0.34, 10);
  expect(rootMeanSquare(errors, single(20), 0.95).value).toBeCloseTo(0.7003070755, 10);
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
        if (plain.low === undefined || plain.high === undefined) return expect(moved.low).toBeUndefined();
        expect(moved.low).toBeCloseTo(2 * plain.low, 9);
        // An interval from few patients can be very wide: compared relatively.
        expect((moved.high as number) / plain.high).toBeCloseTo(2, 9);
      }),
    );
  });
});

describe('meanAbsolute', () => {
  it('is the delta interval of the logarithm, by hand', () => {
    // |e| = 1 1 2 2 4: mean 2, s² = 6/4, V = 0.3; half width t·√0.3/2.
    const found = meanAbsolute(Float64Array.of(-1, 1, 2, -2, 4), single(5), 0.95);
    expect(found.value).toBe(2);
    expect(found.low).toBeCloseTo(2 * Math.exp((-t4 * Math.sqrt(0.3)) / 2), 12);
    expect(found.high).toBeCloseTo(2 * Math.exp((t4 * Math.sqrt(0.3)) / 2), 12);
  });

  it('of errors that are all zero is 0 without an interval', () => {
    expect(meanAbsolute(new Float64Array(10), single(10), 0.95)).toMatchObject({
      value: 0,
      low: undefined,
      notes: ['not-estimable:no-spread'],
    });
  });
});

describe('median', () => {
  it('takes type-7 quantiles at the score limits of one half with t, by hand', () => {
    // n = 5: z → t = 2.776; limits ½ ∓ t/(2√(n + t²)); positions 4·limit.
    const half = t4 / (2 * Math.sqrt(5 + t4 * t4));
    const found = median(Float64Array.of(10, 20, 30, 40, 50), single(5), 0.95);
    expect(found.value).toBe(30);
    expect(found.low).toBeCloseTo(10 + 40 * (0.5 - half), 10);
    expect(found.high).toBeCloseTo(10 + 40 * (0.5 + half), 10);
  });

  it('counts patients, not eyes, where fellow eyes are equal', () => {
    const values = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    const doubled = Float64Array.from(values.flatMap((v) => [v, v]));
    const found = median(doubled, Int32Array.from(values.flatMap((v) => [v, v])), 0.95);
    // ICC of "at or below the median" is 1, so n/deff = 10; t(9) at 0.975 is 2.262157162798205 (SciPy 1.17.1, t.ppf).
    const t = 2.262157162798205;
    const level = 0.5 - t / (2 * Math.sqrt(10 + t * t));
    const place = 19 * level;
    const at = Math.floor(place);
    const expected = (doubled[at] as number) + (place - at) * ((doubled[at + 1] as number) - (doubled[at] as number));
    expect(found.low).toBeCloseTo(expected, 10);
  });

  it('borrows the correlation of the audit below 5 bilateral patients, and says so', () => {
    const values = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8);
    const onePair = Int32Array.of(1, 1, 2, 3, 4, 5, 6, 7);
    const lone = median(values, onePair, 0.95);
    expect(lone.notes).toContain('icc:fellow-eyes-identical');
    expect(median(values, onePair, 0.95, 1)).toMatchObject({ low: lone.low, high: lone.high });
    const uncorrelated = median(values, onePair, 0.95, 0);
    expect(uncorrelated.notes).toContain('icc:whole-audit');
    expect(uncorrelated.low as number).toBeGreaterThan(lone.low as number);
  });

  it('does not exist without eyes', () => {
    expect(median(new Float64Array(), single(0), 0.95)).toMatchObject({
      value: undefined,
      notes: ['not-estimable:no-eyes'],
    });
    expect([...atOrBelow(Float64Array.of(1, 2, 3), 2)]).toEqual([1, 1, 0]);
  });
});
