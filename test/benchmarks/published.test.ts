import { describe, expect, it } from 'vitest';
import { chosenBenchmarks, publishedBenchmarks } from '../../src/benchmarks/published.js';
import { fixed } from '../../src/format/number.js';
import { squareAndAdd } from '../../src/statistics/cohorts/newcombe.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { shareInterval, wilson } from '../../src/statistics/share.js';

/** The share of `count` in `of` eyes of as many patients, by the function that the audit's own shares go through. */
function shareOf(count: number, of: number): number | undefined {
  const hits = new Uint8Array(of).fill(1, 0, count);
  return shareInterval(hits, indexPatients(Int32Array.from({ length: of }, (_, i) => i)), 0.95, { method: 'wilson' })
    .value;
}

// ../shared/spec/standards.md section 9, checks 48 to 52: counts and percentages as printed by their sources.
describe('published counts', () => {
  it.each([
    [205675, 282811, '72.7'],
    [263015, 282811, '93.0'],
    [7938, 8943, '88.76'],
    [5577, 8943, '62.36'],
    [8943, 11083, '80.69'],
    [13580, 23244, '58.4'],
    [19489, 23244, '83.8'],
    [2505, 2823, '88.7'],
    [2163, 2364, '91.5'],
    [33, 68, '48.53'],
    [53, 68, '77.94'],
    [35, 68, '51.47'],
    [54, 68, '79.41'],
  ])('%d of %d are %s %%', (count, of, printed) => {
    const decimals = printed.split('.')[1]?.length ?? 0;
    expect(fixed(100 * (shareOf(count, of) as number), decimals)).toBe(printed);
  });

  // Check 37 and section 6.2: 15/804 against 1/822 differ by 1.74 points (0.82 to 2.94).
  it('differ as printed for tears of the anterior capsule', () => {
    const limits = (x: number, n: number) => {
      const [low, high] = wilson(x, n, 0.95);
      return { share: x / n, low, high };
    };
    const [low, high] = squareAndAdd(limits(15, 804), limits(1, 822), 0);
    expect(fixed(100 * (15 / 804 - 1 / 822), 2)).toBe('1.74');
    expect([fixed(100 * low, 2), fixed(100 * high, 2)]).toEqual(['0.82', '2.94']);
  });
});

describe('benchmarks as data', () => {
  it('agree with the counts that they rest on, and name source and definition', () => {
    expect(publishedBenchmarks.length).toBeGreaterThan(8);
    expect(new Set(publishedBenchmarks.map(({ id }) => id)).size).toBe(publishedBenchmarks.length);
    for (const { counts, value, source, remark, eyes } of publishedBenchmarks) {
      if (counts) expect([value, eyes]).toEqual([counts[0] / counts[1], counts[1]]);
      expect(source).toMatch(/\d{4}/);
      expect(remark.length).toBeGreaterThan(10);
    }
  });

  it('are all, none, or those named', () => {
    expect(chosenBenchmarks('all')).toEqual(publishedBenchmarks);
    expect(chosenBenchmarks('none')).toEqual([]);
    expect(chosenBenchmarks(['gale-2009-0.50']).map(({ id }) => id)).toEqual(['gale-2009-0.50']);
  });
});
