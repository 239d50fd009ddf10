import { describe, expect, it } from 'vitest';
import {
  standardisedDifference,
  standardisedShareDifference,
} from '../../../src/statistics/cohorts/standardised-difference.js';
import { summary } from '../../../src/statistics/summary.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';

describe('standardised differences', () => {
  it.skipIf(!referencePresent)('are those of Austin 2009, computed in base R', () => {
    const { input, expected, tolerance } = example('standardised-difference');
    const of = (values: number[]) => {
      const { mean, sd } = summary(Float64Array.from(values));
      return { mean: mean as number, sd: sd as number };
    };
    expect(agrees(standardisedDifference(of(input.x1), of(input.x2)), expected.continuous, tolerance)).toBe(true);
    expect(agrees(standardisedShareDifference(input.p1, input.p2), expected.binary, tolerance)).toBe(true);
  });

  it('are in units of the mean variance of both groups, by hand', () => {
    // Variances 1 and 7, their mean 4: a difference of 3 is 1.5 of its root.
    expect(standardisedDifference({ mean: 5, sd: 1 }, { mean: 2, sd: Math.sqrt(7) })).toBeCloseTo(1.5, 12);
    // 0.8 · 0.2 = 0.16 and 0.5 · 0.5 = 0.25, their mean 0.205.
    expect(standardisedShareDifference(0.8, 0.5)).toBeCloseTo(0.3 / Math.sqrt(0.205), 12);
  });

  it('do not exist where nothing varies', () => {
    expect(standardisedDifference({ mean: 1, sd: 0 }, { mean: 2, sd: 0 })).toBeUndefined();
    expect(standardisedShareDifference(1, 0)).toBeUndefined();
    expect(() => standardisedShareDifference(62, 48)).toThrow('shareA is 62; expected from 0 to 1');
  });
});
