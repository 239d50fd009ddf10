import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tTwoSided } from '../../src/statistics/distributions.js';
import type { Estimate } from '../../src/statistics/estimate.js';
import { meanInterval } from '../../src/statistics/mean.js';
import { referencePresent } from '../shared-reference.js';
import { single } from './made-up-eyes.js';
import { agrees, example } from './reference-examples.js';

const interval = ({ low, high }: Estimate): [number | undefined, number | undefined] => [low, high];

function expectInterval(found: Estimate, reference: [number, number], tolerance: number): void {
  for (const side of [0, 1] as const) expect(agrees(interval(found)[side], reference[side], tolerance)).toBe(true);
}

describe.skipIf(!referencePresent)('mean interval against R 4.2.2 (shared/reference/stat-examples.json)', () => {
  it('is t.test where each patient has one eye: NIST ZARR13', () => {
    const { input, expected, tolerance } = example('mean-nist-zarr13');
    const found = meanInterval(Float64Array.from(input.x), single(input.x.length), 0.95);
    expect(agrees(found.value, expected.mean, tolerance)).toBe(true);
    expectInterval(found, expected.ci, tolerance);
    expect(found).toMatchObject({ n: 195, patients: 195, method: 'mean-patient-t', notes: [] });
  });

  it('is the one-sample and, on differences, the paired t of Student’s sleep data', () => {
    const { input, expected, tolerance } = example('t-sleep');
    const differences = Float64Array.from(input.x, (x: number, i: number) => x - input.y[i]);
    expectInterval(meanInterval(Float64Array.from(input.x), single(10), 0.95), expected.one_sample_x.ci, tolerance);
    expectInterval(meanInterval(differences, single(10), 0.95), expected.paired.ci, tolerance);
  });

  it('is the paired t of Darwin’s maize, and of the peak-flow differences of Bland and Altman', () => {
    const maize = example('paired-darwin-zea');
    const heights = Float64Array.from(maize.input.x, (x: number, i: number) => x - maize.input.y[i]);
    expectInterval(meanInterval(heights, single(15), 0.95), maize.expected.ci, maize.tolerance);
    const flow = example('bland-altman-pefr');
    const flows = Float64Array.from(flow.input.w1, (w: number, i: number) => w - flow.input.m1[i]);
    const found = meanInterval(flows, single(17), 0.95);
    expect(agrees(found.value, flow.expected.mean_difference, flow.tolerance)).toBe(true);
    expectInterval(found, flow.expected.ci_mean, flow.tolerance);
  });

  it('has the jackknife SE of the mean: air conditioning, boot 1.3.28.1', () => {
    const { input, expected, tolerance } = example('bootstrap-aircondit');
    const found = meanInterval(Float64Array.from(input.x), single(12), 0.95);
    expect(agrees(found.value, expected.mean, tolerance)).toBe(true);
    // t(11) at 0.975 is 2.200985160091639 (SciPy 1.17.1, t.ppf).
    const se = ((found.high as number) - (found.value as number)) / 2.200985160091639;
    expect(agrees(se, expected.jackknife_se_mean, tolerance)).toBe(true);
  });

  it('is CR1 of clubSandwich 0.5.8 with both eyes of some patients', () => {
    const { input, expected, tolerance } = example('cluster-mean-icc');
    const found = meanInterval(Float64Array.from(input.y), Int32Array.from(input.patient), 0.95);
    expect(agrees(found.value, expected.mean.mean, tolerance)).toBe(true);
    expectInterval(found, expected.mean.ci, tolerance);
    expect(found).toMatchObject({ n: 19, patients: 12 });
    const t = expected.mean.mean / expected.mean.se_cluster;
    expect(agrees(tTwoSided(t, 11), expected.mean.p, tolerance)).toBe(true);
  });

  it('has the ratio-estimator variance of litters: Rao and Scott 1992', () => {
    const { input, expected, tolerance } = example('rao-scott-weil');
    for (const group of ['control', 'treated']) {
      const { n, y } = input[group];
      const litters: number[] = n.flatMap((size: number, g: number) => Array.from({ length: size }, () => g));
      const hits: number[] = n.flatMap((size: number, g: number) =>
        Array.from({ length: size }, (_, i) => (i < y[g] ? 1 : 0)),
      );
      const found = meanInterval(Float64Array.from(hits), Int32Array.from(litters), 0.95);
      // t(15) at 0.975 is 2.131449545559776 (SciPy 1.17.1, t.ppf).
      const variance = (((found.high as number) - (found.value as number)) / 2.131449545559776) ** 2;
      expect(agrees(variance, expected[group].v, tolerance)).toBe(true);
    }
  });
});

// Standards page, check 61, set G: eyes of 6 patients as 0/1. By hand: patient sums of y − 0.6 are 0.8, −0.2, 0.8,
// −0.6, 0.4, −1.2, so the standard error is √(6/5 · 3.28)/10 = 0.198394 (the page prints 0.19840).
it('has the cluster standard error of set G', () => {
  const found = meanInterval(
    Float64Array.of(1, 1, 1, 0, 1, 1, 0, 1, 0, 0),
    Int32Array.of(1, 1, 2, 2, 3, 3, 4, 5, 6, 6),
    0.95,
  );
  // t(5) at 0.975 is 2.5705818356363146 (SciPy 1.17.1, t.ppf).
  expect(found.value).toBeCloseTo(0.6, 12);
  expect(((found.high as number) - 0.6) / 2.5705818356363146).toBeCloseTo(Math.sqrt((6 / 5) * 3.28) / 10, 12);
});

describe('mean interval, worked by hand', () => {
  // t(4) at 0.975 is 2.7764451051977934 (SciPy 1.17.1, t.ppf).
  const t4 = 2.7764451051977934;
  const means = [1, 2, 3, 4, 5];
  const pairs = Int32Array.of(1, 1, 2, 2, 3, 3, 4, 4, 5, 5);

  it('is that of five patients where both eyes of each are equal: a copied eye adds nothing', () => {
    const copied = Float64Array.from(means.flatMap((value) => [value, value]));
    const found = meanInterval(copied, pairs, 0.95);
    // Σu² = Σ(2(y − 3)/10)² = 10·4/100 = 0.4; V = 5/4·0.4 = 0.5 = s²/5 with s² = 2.5.
    expect(found.value).toBe(3);
    expect(found.high).toBeCloseTo(3 + t4 * Math.sqrt(0.5), 12);
    expect(found).toMatchObject({ n: 10, patients: 5, notes: ['few-patients'] });
  });

  it('has no width where fellow eyes cancel: each patient’s sum is zero', () => {
    const opposite = Float64Array.from(means.flatMap((value) => [3 + value, 3 - value]));
    expect(meanInterval(opposite, pairs, 0.95)).toMatchObject({ value: 3, low: 3, high: 3 });
  });

  it('adds the two deviations of one pair among singles before squaring', () => {
    const found = meanInterval(Float64Array.of(2, 4, 1, 3, 5, 3), Int32Array.of(1, 1, 2, 3, 4, 5), 0.95);
    // Mean 3; sums of deviations −1 + 1 = 0, −2, 0, 2, 0; Σu² = 8/36; V = 5/4·8/36 = 10/36.
    expect(found.value).toBe(3);
    expect(found.low).toBeCloseTo(3 - (t4 * Math.sqrt(10)) / 6, 12);
  });
});

describe('mean interval, edges', () => {
  it('has no value without eyes, no limits below 5 patients, a mark below 10', () => {
    expect(meanInterval(new Float64Array(), new Int32Array(), 0.95)).toEqual({
      value: undefined,
      low: undefined,
      high: undefined,
      n: 0,
      patients: 0,
      method: 'mean-patient-t',
      notes: ['not-estimable:no-eyes'],
    });
    const four = meanInterval(Float64Array.of(1, 2, 3, 4, 5), Int32Array.of(1, 1, 2, 3, 4), 0.95);
    expect(four).toMatchObject({ value: 3, low: undefined, n: 5, patients: 4, notes: ['not-estimable:few-patients'] });
    expect(meanInterval(Float64Array.from(single(9)), single(9), 0.95).notes).toEqual(['few-patients']);
    expect(meanInterval(Float64Array.from(single(10)), single(10), 0.95).notes).toEqual([]);
  });

  it('refuses missing values, columns of two lengths and a confidence in percent', () => {
    expect(() => meanInterval(Float64Array.of(Number.NaN), single(1), 0.95)).toThrow(
      'meanInterval: value 0 is NaN; expected a finite number',
    );
    expect(() => meanInterval(Float64Array.of(1), single(2), 0.95)).toThrow('columns of 1 and 2; expected one length');
    expect(() => meanInterval(Float64Array.of(1), single(1), 95)).toThrow(
      'meanInterval: confidence is 95; expected above 0 and below 1, such as 0.95',
    );
  });

  it('moves with a shift, grows with a scale, and does not depend on the order of eyes or on patient codes', () => {
    const eyes = fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: -40, max: 40 })), {
      minLength: 12,
      maxLength: 40,
    });
    fc.assert(
      fc.property(eyes, (rows) => {
        const of = (list: typeof rows, code: (patient: number) => number, value: (v: number) => number): Estimate =>
          meanInterval(
            Float64Array.from(list, ([, v]) => value(v / 8)),
            Int32Array.from(list, ([patient]) => code(patient)),
            0.95,
          );
        const plain = of(
          rows,
          (patient) => patient,
          (v) => v,
        );
        const moved = of(
          rows.toReversed(),
          (patient) => 1000 - 7 * patient,
          (v) => 2 * v + 1,
        );
        if (plain.low === undefined) {
          expect(moved.low).toBeUndefined();
          return;
        }
        expect(moved.low).toBeCloseTo(2 * plain.low + 1, 9);
        expect(moved.high).toBeCloseTo(2 * (plain.high as number) + 1, 9);
      }),
    );
  });
});
