import { describe, expect, it } from 'vitest';
import { atOrBelow, median } from '../../src/statistics/median.js';
import { single } from './made-up-eyes.js';

/** t(4) at 0.975 (SciPy 1.17.1, t.ppf). */
const t4 = 2.7764451051977934;

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
