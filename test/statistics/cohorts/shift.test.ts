import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../../src/statistics/cohorts/contrast.js';
import { relativeEffect } from '../../../src/statistics/cohorts/relative-effect.js';
import { differenceQuantile, shift } from '../../../src/statistics/cohorts/shift.js';
import { tQuantile } from '../../../src/statistics/distributions.js';
import { quantile } from '../../../src/statistics/quantile.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';
import { eyesOf, independent, mixedEyes, pairOf, swapped, values } from './made-up-cohorts.js';

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
        if (found.low === undefined || found.value === undefined) {
          expect(moved.low).toBeUndefined();
          return;
        }
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
