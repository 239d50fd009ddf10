import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../../src/statistics/cohorts/contrast.js';
import { recogniseDesign } from '../../../src/statistics/cohorts/design.js';
import { meanDifference } from '../../../src/statistics/cohorts/mean-difference.js';
import { relativeEffect } from '../../../src/statistics/cohorts/relative-effect.js';
import { differenceQuantile, shift } from '../../../src/statistics/cohorts/shift.js';
import { spreadRatio } from '../../../src/statistics/cohorts/spread-ratio.js';
import { tQuantile, tTwoSided } from '../../../src/statistics/distributions.js';
import { quantile } from '../../../src/statistics/quantile.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';
import { fellowEyes, independent, type Pair, pairOf, twoGroups } from './made-up-cohorts.js';

const swapped = ({ a, b, cohorts: { a: A, b: B, ...rest } }: Pair): Pair => ({
  a: b,
  b: a,
  cohorts: recogniseDesign(
    Int32Array.from(B.of, (g) => rest.jointOfB[g] as number),
    Int32Array.from(A.of, (g) => rest.jointOfA[g] as number),
  ),
});

const mean = (values: ArrayLike<number>): number => Array.from(values).reduce((sum, v) => sum + v, 0) / values.length;
const variance = (values: ArrayLike<number>): number => {
  const centre = mean(values);
  return Array.from(values).reduce((sum, v) => sum + (v - centre) ** 2, 0) / (values.length - 1);
};

// Eighths, so that shifts and mirrors are exact; the made-up eyes have at least 5 patients in each cohort.
const values = fc.array(
  fc.integer({ min: -24, max: 24 }).map((v) => v / 8),
  { minLength: 6, maxLength: 20 },
);
const mixedEyes = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: -24, max: 24 })), {
  minLength: 14,
  maxLength: 30,
});
const eyesOf = (rows: readonly (readonly [number, number])[]) => rows.map(([g, v]) => [g, v / 8] as const);

describe('meanDifference', () => {
  it.skipIf(!referencePresent)('has the check values of the statistics page, B − A', () => {
    const apart = swapped(twoGroups('group_independent'));
    const found = meanDifference(apart.a, apart.b, apart.cohorts, 0.95);
    expect(found.value).toBeCloseTo(0.161888888889, 12);
    expect(found.standardError).toBeCloseTo(0.294355375058, 12);
    expect(found.df).toBeCloseTo(8.760282891889, 11);
    expect(found.p).toBeCloseTo(0.596075762876, 12);
    const mixed = swapped(twoGroups('group_mixed'));
    const shared = meanDifference(mixed.a, mixed.b, mixed.cohorts, 0.95);
    expect(shared.value).toBeCloseTo(0.152666666667, 12);
    expect(shared.standardError).toBeCloseTo(0.220292653265, 12);
    expect(shared.df).toBeCloseTo(5.485087327049, 11);
    expect(shared.p).toBeCloseTo(0.516548175724, 12);
    expect(shared.notes).toEqual(['design:mixed', 'few-patients']);
    // The estimates are also those of R; its CR2 standard errors are another method.
    const { expected, tolerance } = example('cluster-two-groups');
    expect(agrees(found.value, expected.independent.difference_B_minus_A, tolerance)).toBe(true);
    expect(agrees(shared.value, expected.mixed.difference_B_minus_A, tolerance)).toBe(true);
  });

  it.skipIf(!referencePresent).each(['t-sleep', 't-nist-auto83b'])('is Welch’s t of R 4.2.2: %s', (id) => {
    const { input, expected, tolerance } = example(id);
    const { a, b, cohorts } = independent(input.x, input.y);
    const found = meanDifference(a, b, cohorts, 0.95);
    const t = (found.value as number) / (found.standardError as number);
    expect(agrees(t, expected.welch.t, tolerance)).toBe(true);
    expect(agrees(found.df, expected.welch.df, tolerance)).toBe(true);
    expect(agrees(found.p, expected.welch.p, tolerance)).toBe(true);
    expect(agrees(found.low, expected.welch.ci[0], tolerance)).toBe(true);
    expect(agrees(found.high, expected.welch.ci[1], tolerance)).toBe(true);
    expect(found.notes).toContain('textbook:welch');
  });

  it.skipIf(!referencePresent)('is the paired t of R 4.2.2 where each patient has one eye in each cohort', () => {
    const { input, expected, tolerance } = example('t-sleep');
    const { a, b, cohorts } = fellowEyes(input.x, input.y);
    const found = meanDifference(a, b, cohorts, 0.95);
    expect(agrees(found.p, expected.paired.p, tolerance)).toBe(true);
    expect(agrees(found.df, 9, 1e-12)).toBe(true);
    expect(agrees(found.low, expected.paired.ci[0], tolerance)).toBe(true);
    expect(found.notes).toEqual(['design:fellow-eye', 'textbook:paired-t']);
    const reduced = example('cluster-reduction');
    expect(agrees(found.standardError, reduced.expected.fellow_pairs.se, reduced.tolerance)).toBe(true);
    const maize = example('paired-darwin-zea');
    const plants = fellowEyes(maize.input.x, maize.input.y);
    const heights = meanDifference(plants.a, plants.b, plants.cohorts, 0.95);
    expect(agrees(heights.p, maize.expected.p_t, maize.tolerance)).toBe(true);
    expect(agrees(heights.value, maize.expected.mean_difference, maize.tolerance)).toBe(true);
  });

  it('is Welch’s t to 1e-12 with one eye a patient', () => {
    fc.assert(
      fc.property(values, values, (x, y) => {
        const { a, b, cohorts } = independent(x, y);
        const found = meanDifference(a, b, cohorts, 0.95);
        const parts = [variance(x) / x.length, variance(y) / y.length] as const;
        const V = parts[0] + parts[1];
        if (V === 0) return expect(found.notes).toContain('not-estimable:no-spread');
        const df = V ** 2 / (parts[0] ** 2 / (x.length - 1) + parts[1] ** 2 / (y.length - 1));
        expect(found.standardError).toBeCloseTo(Math.sqrt(V), 12);
        expect(found.df).toBeCloseTo(df, 10);
        expect(found.p).toBeCloseTo(tTwoSided((mean(x) - mean(y)) / Math.sqrt(V), df), 12);
      }),
    );
  });

  it('is the paired t to 1e-12 with one eye in each cohort', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -24, max: 24 }), fc.integer({ min: -24, max: 24 })), { minLength: 5 }),
        (rows) => {
          const x = rows.map(([v]) => v / 8);
          const y = rows.map(([, v]) => v / 8);
          const { a, b, cohorts } = fellowEyes(x, y);
          const found = meanDifference(a, b, cohorts, 0.95);
          const differences = x.map((v, i) => v - (y[i] as number));
          const V = variance(differences) / rows.length;
          if (V < 1e-20) return;
          expect(found.standardError).toBeCloseTo(Math.sqrt(V), 12);
          expect(found.df).toBeCloseTo(rows.length - 1, 9);
          expect(found.p).toBeCloseTo(tTwoSided(mean(differences) / Math.sqrt(V), rows.length - 1), 12);
        },
      ),
    );
  });

  it('turns round with the cohorts, and ignores shifts of both, order and patient codes', () => {
    fc.assert(
      fc.property(mixedEyes, mixedEyes, (rowsA, rowsB) => {
        const plain = pairOf(eyesOf(rowsA), eyesOf(rowsB));
        const code = (eyes: ReturnType<typeof eyesOf>) =>
          eyes.toReversed().map(([g, v]) => [50 - 3 * g, v + 2] as const);
        const moved = pairOf(code(eyesOf(rowsB)), code(eyesOf(rowsA)));
        const found = meanDifference(plain.a, plain.b, plain.cohorts, 0.95);
        const turned = meanDifference(moved.a, moved.b, moved.cohorts, 0.95);
        if (found.low === undefined) return expect(turned.low).toBeUndefined();
        expect(turned.low).toBeCloseTo(-(found.high as number), 9);
        expect(turned.p).toBeCloseTo(found.p as number, 9);
        expect(turned.df).toBeCloseTo(found.df as number, 6);
      }),
    );
  });

  it('fellow eyes that are copies count once: both eyes in one cohort', () => {
    const x = [1, 2, 3, 4, 6];
    const y = [2, 4, 4, 5, 7];
    const twice = (list: number[], from: number) =>
      list.flatMap((v, i) => [[from + i, v] as const, [from + i, v] as const]);
    const one = independent(x, y);
    const two = pairOf(twice(x, 0), twice(y, 100));
    const single = meanDifference(one.a, one.b, one.cohorts, 0.95);
    const double = meanDifference(two.a, two.b, two.cohorts, 0.95);
    expect(double.low).toBeCloseTo(single.low as number, 12);
    expect(double.p).toBeCloseTo(single.p as number, 12);
    expect(double).toMatchObject({ n: 20, patients: 10, notes: ['design:independent', 'few-patients'] });
  });

  it('gives counts only below 5 patients in a cohort', () => {
    const { a, b, cohorts } = independent([1, 2, 3, 4], [1, 2, 3, 4, 5]);
    expect(meanDifference(a, b, cohorts, 0.95)).toMatchObject({
      value: undefined,
      low: undefined,
      p: undefined,
      n: 9,
      patients: 9,
      notes: ['design:independent', 'not-estimable:few-patients'],
    });
  });

  it('refuses columns that do not belong to the design', () => {
    const { a, cohorts } = independent([1, 2, 3], [1, 2]);
    expect(() => meanDifference(a, a, cohorts, 0.95)).toThrow(
      'meanDifference: columns of 3 and 2; expected one length',
    );
  });
});

describe('spreadRatio', () => {
  it.skipIf(!referencePresent)('is the root of the variance ratio of R 4.2.2', () => {
    const { input, expected, tolerance } = example('var-ratio-F');
    const { a, b, cohorts } = independent(input.x, input.y);
    expect(agrees((spreadRatio(a, b, cohorts, 0.95).value as number) ** 2, expected.F, tolerance)).toBe(true);
  });

  it('is the jackknife over patients, by its definition', () => {
    const x = [1, 2, 4, 8, 9];
    const y = [0, 1, 1, 3, 7, 8];
    const logsWithout = (list: number[]) =>
      list.map((_, out) => Math.log(variance(list.filter((_v, i) => i !== out))) / 2);
    const parts = [x, y].map((list) => {
      const logs = logsWithout(list);
      return ((list.length - 1) / list.length) * (variance(logs) * (list.length - 1));
    }) as [number, number];
    const V = parts[0] + parts[1];
    const df = V ** 2 / (parts[0] ** 2 / 4 + parts[1] ** 2 / 5);
    const { a, b, cohorts } = independent(x, y);
    const found = spreadRatio(a, b, cohorts, 0.95);
    const ratio = Math.sqrt(variance(x) / variance(y));
    expect(found.value).toBeCloseTo(ratio, 12);
    expect(found.standardError).toBeCloseTo(Math.sqrt(V), 12);
    expect(found.df).toBeCloseTo(df, 10);
    expect(found.high).toBeCloseTo(ratio * Math.exp(tQuantile(0.975, df) * Math.sqrt(V)), 9);
    expect(found.p).toBeCloseTo(tTwoSided(Math.log(ratio) / Math.sqrt(V), df), 12);
  });

  it('does not change with scale and shift of both, and is inverted by turning the cohorts round', () => {
    const { a, b, cohorts } = pairOf(
      [
        [1, 1],
        [1, 3],
        [2, 0],
        [3, 5],
        [4, 2],
        [5, 2.5],
      ],
      [
        [1, 2],
        [2, 7],
        [6, 1],
        [7, 3],
        [8, 9],
        [8, 4],
      ],
    );
    const plain = spreadRatio(a, b, cohorts, 0.95);
    const scaled = spreadRatio(
      a.map((v) => 3 * v - 1),
      b.map((v) => 3 * v + 5),
      cohorts,
      0.95,
    );
    expect(scaled.low).toBeCloseTo(plain.low as number, 10);
    const other = swapped({ a, b, cohorts });
    const turned = spreadRatio(other.a, other.b, other.cohorts, 0.95);
    expect(turned.value).toBeCloseTo(1 / (plain.value as number), 12);
    expect(turned.high).toBeCloseTo(1 / (plain.low as number), 10);
    expect(turned.p).toBeCloseTo(plain.p as number, 12);
  });

  it('says which cohort does not vary, and gives counts only below 5 patients', () => {
    const flat = independent([1, 1, 1, 1, 1], [1, 2, 3, 4, 5]);
    expect(spreadRatio(flat.a, flat.b, flat.cohorts, 0.95).notes).toContain('not-estimable:no-spread');
    const lone = independent([1, 2, 3, 4, 5], [1, 1, 1, 1, 9]);
    expect(spreadRatio(lone.a, lone.b, lone.cohorts, 0.95).notes).toContain('not-estimable:one-patient-varies');
    const few = independent([1, 2, 3, 4], [1, 2, 3, 4, 5]);
    expect(spreadRatio(few.a, few.b, few.cohorts, 0.95)).toMatchObject({ value: undefined, p: undefined });
  });
});

describe('relativeEffect', () => {
  it.skipIf(!referencePresent)('has the check values of the statistics page, A above B', () => {
    const apart = twoGroups('group_independent');
    const found = relativeEffect(apart.a, apart.b, apart.cohorts, 0.95);
    expect(found.value).toBeCloseTo(0.411111111111, 12);
    expect(found.p).toBeCloseTo(0.643789651054, 11);
    const mixed = twoGroups('group_mixed');
    const shared = relativeEffect(mixed.a, mixed.b, mixed.cohorts, 0.95);
    expect(shared.value).toBeCloseTo(0.416666666667, 12);
    expect(shared.p).toBeCloseTo(0.569429612292, 11);
  });

  // SciPy 1.17.1: scipy.stats.brunnermunzel(a, b) gives −3.2419693477464504 (its sign is that of B − A) and the p.
  it('is the test of Brunner and Munzel where each patient has one eye', () => {
    const { a, b, cohorts } = independent(
      [0.25, 0.5, -0.25, 1.0, 0.75, 0.5, 1.25],
      [-0.5, 0.25, 0.0, 0.5, -0.75, 0.25, 0.0, -0.25],
    );
    const found = relativeEffect(a, b, cohorts, 0.95);
    expect(found.value).toBeCloseTo(0.8482142857142857, 14);
    expect(((found.value as number) - 0.5) / (found.standardError as number)).toBeCloseTo(3.2419693477464504, 12);
    expect(found.p).toBeCloseTo(0.00997819958110496, 13);
  });

  it.skipIf(!referencePresent)('is the probability of superiority: effectsize 0.8.3, wilcox.test, SciPy', () => {
    const ozone = example('mannwhitney-airquality-ties');
    const { a, b, cohorts } = independent(ozone.input.x, ozone.input.y);
    const found = relativeEffect(a, b, cohorts, 0.95);
    const cliff = example('cliff-airquality');
    expect(agrees(found.value, cliff.expected.prob_superiority, cliff.tolerance)).toBe(true);
    expect(agrees(2 * (found.value as number) - 1, cliff.expected.cliffs_delta, cliff.tolerance)).toBe(true);
    expect(agrees((found.value as number) * 26 * 26, ozone.expected.W, ozone.tolerance)).toBe(true);
    // SciPy 1.17.1, scipy.stats.brunnermunzel on the same two months.
    expect(found.p).toBeCloseTo(5.869131577984336e-6, 15);
    const constants = example('mannwhitney-permeability');
    const pair = independent(constants.input.x, constants.input.y);
    expect(agrees(relativeEffect(pair.a, pair.b, pair.cohorts, 0.95).value, constants.expected.auc, 1e-12)).toBe(true);
  });

  it('is the Brunner–Munzel test to 1e-12, by ranks of the pooled sample', () => {
    const rank = (list: number[], v: number) =>
      list.filter((o) => o < v).length + (list.filter((o) => o === v).length + 1) / 2;
    fc.assert(
      fc.property(values, values, (x, y) => {
        const { a, b, cohorts } = independent(x, y);
        const found = relativeEffect(a, b, cohorts, 0.95);
        // The paper's form: pooled ranks less ranks within the sample.
        const pooled = [...x, ...y];
        const placed = [x, y].map((list) => list.map((v) => rank(pooled, v) - rank(list, v)));
        const s = placed.map((list) => variance(list)) as [number, number];
        const parts = [s[0] / x.length / y.length ** 2, s[1] / y.length / x.length ** 2] as const;
        const V = parts[0] + parts[1];
        expect(found.value).toBeCloseTo(mean(placed[0] as number[]) / y.length, 12);
        if (found.standardError === undefined) return expect(V).toBeCloseTo(0, 12);
        const df = V ** 2 / (parts[0] ** 2 / (x.length - 1) + parts[1] ** 2 / (y.length - 1));
        expect(found.standardError).toBeCloseTo(Math.sqrt(V), 12);
        expect(found.p).toBeCloseTo(tTwoSided(((found.value as number) - 0.5) / Math.sqrt(V), df), 10);
      }),
    );
  });

  it('does not change under any increasing transformation, and turns to 1 − θ with the cohorts', () => {
    fc.assert(
      fc.property(mixedEyes, mixedEyes, (rowsA, rowsB) => {
        const plain = pairOf(eyesOf(rowsA), eyesOf(rowsB));
        const found = relativeEffect(plain.a, plain.b, plain.cohorts, 0.95);
        const other = swapped({ ...plain, a: plain.a.map(Math.exp), b: plain.b.map(Math.exp) });
        const turned = relativeEffect(other.a, other.b, other.cohorts, 0.95);
        if (found.value === undefined) return expect(turned.value).toBeUndefined();
        expect(turned.value).toBeCloseTo(1 - found.value, 10);
        if (found.p !== undefined) expect(turned.p).toBeCloseTo(found.p, 8);
      }),
    );
  });

  it('has no test where no value of one cohort lies among the other’s', () => {
    const { a, b, cohorts } = independent([6, 7, 8, 9, 10], [1, 2, 3, 4, 5]);
    expect(relativeEffect(a, b, cohorts, 0.95)).toMatchObject({
      value: 1,
      low: undefined,
      p: undefined,
      notes: ['design:independent', 'few-patients', 'not-estimable:complete-separation'],
    });
  });
});

describe('shift', () => {
  it.skipIf(!referencePresent)('is the Hodges–Lehmann estimate of wilcox.test', () => {
    const { input, expected, tolerance } = example('mannwhitney-permeability');
    const { a, b, cohorts } = independent(input.x, input.y);
    expect(agrees(shift(a, b, cohorts, 0.95).value, expected.hodges_lehmann, tolerance)).toBe(true);
  });

  // Tenths: their differences are neighbouring doubles that are equal on paper, where a careless bisection never ends.
  const tenths = fc.array(
    fc.integer({ min: -24, max: 24 }).map((v) => v / 10),
    { minLength: 1, maxLength: 20 },
  );
  it('takes its quantiles of all differences without forming them', () => {
    fc.assert(
      fc.property(tenths, values, fc.double({ min: 0, max: 1, noNaN: true }), (x, y, p) => {
        const sortedX = Float64Array.from(x).sort();
        const sortedY = Float64Array.from(y).sort();
        const all = Float64Array.from(x.flatMap((v) => y.map((w) => v - w))).sort();
        expect(differenceQuantile(sortedX, sortedY, p)).toBeCloseTo(quantile(all, p), 12);
      }),
    );
  });

  it('ends between neighbouring doubles', () => {
    // 0.1625 from 0.1625 − 0, and 0.16250000000000003 from 0.28750000000000003 − 0.125.
    const x = Float64Array.of(0.1625, 0.28750000000000003);
    const y = Float64Array.of(0, 0.125);
    expect([0, 1, 2, 3].map((k) => differenceQuantile(x, y, k / 3))).toEqual([
      0.1625 - 0.125,
      0.1625,
      0.28750000000000003 - 0.125,
      0.28750000000000003,
    ]);
  });

  it('finds an exact difference of decimals, ties or none', () => {
    const x = [0.54, 0.29, 0.75, 0.17, 1.08].sort((v, w) => v - w);
    const y = [0.25, 0.3, 0.3, 0.12].sort((v, w) => v - w);
    const all = Float64Array.from(x.flatMap((v) => y.map((w) => v - w))).sort();
    for (let k = 0; k < all.length; k++) {
      expect(differenceQuantile(Float64Array.from(x), Float64Array.from(y), k / 19)).toBeCloseTo(all[k] as number, 12);
    }
  });

  it('has limits at ½ ± t·√V of the aligned relative effect', () => {
    const x = [0.2, 0.9, 1.4, 2.2, 3.1, 4.5];
    const y = [0.1, 0.3, 0.8, 1.9, 2.6];
    const { a, b, cohorts } = independent(x, y);
    const found = shift(a, b, cohorts, 0.95);
    const all = Float64Array.from(x.flatMap((v) => y.map((w) => v - w))).sort();
    expect(found.value).toBeCloseTo(quantile(all, 0.5), 12);
    const aligned = independent(
      x.map((v) => v - (found.value as number)),
      y,
    );
    const effect: Comparison = relativeEffect(aligned.a, aligned.b, aligned.cohorts, 0.95);
    const half = tQuantile(0.975, effect.df as number) * (effect.standardError as number);
    expect(found.low).toBeCloseTo(quantile(all, Math.max(0, 0.5 - half)), 10);
    expect(found.high).toBeCloseTo(quantile(all, Math.min(1, 0.5 + half)), 10);
  });

  it('moves with a shift of A and turns round with the cohorts', () => {
    fc.assert(
      fc.property(mixedEyes, mixedEyes, (rowsA, rowsB) => {
        const plain = pairOf(eyesOf(rowsA), eyesOf(rowsB));
        const found = shift(plain.a, plain.b, plain.cohorts, 0.95);
        const moved = shift(
          plain.a.map((v) => v + 0.375),
          plain.b,
          plain.cohorts,
          0.95,
        );
        const other = swapped(plain);
        const turned = shift(other.a, other.b, other.cohorts, 0.95);
        if (found.low === undefined || found.value === undefined) return expect(moved.low).toBeUndefined();
        expect(moved.value).toBeCloseTo(found.value + 0.375, 10);
        expect(moved.low).toBeCloseTo(found.low + 0.375, 6);
        expect(turned.value).toBeCloseTo(-found.value, 10);
        expect(turned.high).toBeCloseTo(-found.low, 6);
      }),
    );
  });

  it('of two cohorts without spread has no limits', () => {
    const { a, b, cohorts } = independent([2, 2, 2, 2, 2], [1, 1, 1, 1, 1]);
    expect(shift(a, b, cohorts, 0.95)).toMatchObject({ value: 1, low: undefined });
  });
});
