import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanDifference } from '../../../src/statistics/cohorts/mean-difference.js';
import { tTwoSided } from '../../../src/statistics/distributions.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';
import {
  eyesOf,
  fellowEyes,
  independent,
  mean,
  mixedEyes,
  pairOf,
  swapped,
  twoGroups,
  values,
  variance,
} from './made-up-cohorts.js';

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
        if (V === 0) {
          expect(found.notes).toContain('not-estimable:no-spread');
          return;
        }
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
        if (found.low === undefined) {
          expect(turned.low).toBeUndefined();
          return;
        }
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
