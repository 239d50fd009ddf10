import { describe, expect, it } from 'vitest';
import { cumulativeSum, oddsRatioOf, scoreWeight, simulatedLimit } from '../../src/statistics/cumulative-sum.js';
import { seeded } from '../../src/statistics/seeded.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

describe.skipIf(!referencePresent)(
  'the cumulative sum of Steiner et al. 2000 (shared/reference/stat-examples.json)',
  () => {
    it('has the weights and the course worked there', () => {
      const { input, expected, tolerance } = example('cusum-steiner');
      const weights = Float64Array.from(input.y as number[], (y, i) =>
        scoreWeight(y === 1, input.risk[i], input.RA / input.R0),
      );
      const { sums } = cumulativeSum(weights);
      weights.forEach((weight, i) => {
        expect(agrees(weight, expected.weight[i], tolerance)).toBe(true);
        expect(agrees(sums[i], expected.cusum[i], tolerance)).toBe(true);
      });
    });
  },
);

describe('weights', () => {
  // Steiner et al. 2000: a failure at risk 0.1 with the odds doubled adds log(2/1.1).
  it('are log likelihood ratios', () => {
    expect(scoreWeight(true, 0.1, 2)).toBeCloseTo(Math.log(2 / 1.1), 12);
    // Failing with 0.35 instead of 0.25: log(0.35/0.25) and log(0.65/0.75).
    const ratio = oddsRatioOf(0.35, 0.25);
    expect(scoreWeight(true, 0.25, ratio)).toBeCloseTo(Math.log(0.35 / 0.25), 12);
    expect(scoreWeight(false, 0.25, ratio)).toBeCloseTo(Math.log(0.65 / 0.75), 12);
  });

  it('refuse a risk of none or all', () => {
    expect(() => scoreWeight(true, 0, 2)).toThrow(/scoreWeight: risk 0, ratio 2/);
  });
});

describe('signals', () => {
  it('are sums above the limit, behind which the sum starts again', () => {
    const { sums, signals } = cumulativeSum(Float64Array.of(1, 1, -3, 1, 1, 1, 1), 1.5);
    expect([...sums]).toEqual([1, 2, 0, 1, 2, 1, 2]);
    expect(signals).toEqual([1, 4, 6]);
  });
});

describe('the simulated limit', () => {
  const single = Int32Array.from({ length: 120 }, (_, i) => i);
  const both = single.map((i) => Math.floor(i / 2));
  const series = { patients: single, risk: 0.25, oddsRatio: oddsRatioOf(0.35, 0.25), icc: 0 };

  it('is the same for one seed, and close for another', () => {
    const limit = simulatedLimit(series, 0.05, 1);
    expect(simulatedLimit(series, 0.05, 1)).toBe(limit);
    expect(Math.abs(simulatedLimit(series, 0.05, 2) - limit)).toBeLessThan(0.3);
  });

  it('is passed by a series at the acceptable state as often as declared', () => {
    const limit = simulatedLimit(series, 0.05, 7);
    const next = seeded(99);
    let passed = 0;
    for (let run = 0; run < 4000; run++) {
      const weights = Float64Array.from(single, () => scoreWeight(next() < 0.25, 0.25, series.oddsRatio));
      if (cumulativeSum(weights, limit).signals.length > 0) passed++;
    }
    // 5 % of 4000 runs, standard error 0.34 points; the limit itself is simulated in 10,000 runs.
    expect(passed / 4000).toBeGreaterThan(0.036);
    expect(passed / 4000).toBeLessThan(0.064);
  });

  it('is higher where fellow eyes fail together', () => {
    const alone = simulatedLimit({ ...series, patients: both, icc: 0 }, 0.05, 1);
    expect(simulatedLimit({ ...series, patients: both, icc: 0.8 }, 0.05, 1)).toBeGreaterThan(alone + 0.2);
  });
});
