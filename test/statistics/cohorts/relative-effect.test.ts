import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { relativeEffect } from '../../../src/statistics/cohorts/relative-effect.js';
import { tTwoSided } from '../../../src/statistics/distributions.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';
import {
  eyesOf,
  independent,
  mean,
  mixedEyes,
  pairOf,
  swapped,
  twoGroups,
  values,
  variance,
} from './made-up-cohorts.js';

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
        if (found.standardError === undefined) {
          expect(V).toBeCloseTo(0, 12);
          return;
        }
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
        if (found.value === undefined) {
          expect(turned.value).toBeUndefined();
          return;
        }
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
