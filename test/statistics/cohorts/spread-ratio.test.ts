import { describe, expect, it } from 'vitest';
import { spreadRatio } from '../../../src/statistics/cohorts/spread-ratio.js';
import { tQuantile, tTwoSided } from '../../../src/statistics/distributions.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';
import { independent, pairOf, swapped, variance } from './made-up-cohorts.js';

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
