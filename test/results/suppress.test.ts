import { describe, expect, it } from 'vitest';
import { suppressed } from '../../src/results/suppress.js';
import { rowsOf } from '../tables/rows.js';

const none = new Set<string>();
const count = (measure: string, group: string, statistic: string, value: number, n = value) =>
  rowsOf({ measure, group, n, patients: 100, unit: 'eyes', method: 'count' }, { [statistic]: value });
const hiddenOf = (rows: ReturnType<typeof count>, smallCells: number, pairs: ReadonlySet<string> = none) =>
  suppressed(rows, { smallCells, hiddenPairs: pairs })
    .filter(({ note }) => note === 'suppressed')
    .map(({ group, statistic }) => `${group} ${statistic}`);

describe('small counts', () => {
  it('are left as they are where nothing is declared', () => {
    const rows = count('cdva', 'all', 'count_at_or_better_20/40', 3, 100);
    expect(suppressed(rows, { smallCells: 0, hiddenPairs: none })).toBe(rows);
  });

  it('are hidden from one to below the cell size, zero is shown', () => {
    const rows = [0, 1, 4, 5].flatMap((value) => count('a', `all`, `count_${value}`, value, 100));
    expect(hiddenOf(rows, 5)).toEqual(['all count_1', 'all count_4']);
  });

  it('take their share with them, and nothing of it is left', () => {
    const share = rowsOf(
      { measure: 'a', group: 'all', n: 100, patients: 100, unit: 'share', method: 'exact-effective-n' },
      { share: [0.03, 0.01, 0.08] },
    );
    const [hidden] = suppressed([...share, ...count('a', 'all', 'count', 3, 100)], {
      smallCells: 5,
      hiddenPairs: none,
    });
    expect(hidden).toMatchObject({
      value: undefined,
      ci_low: undefined,
      ci_high: undefined,
      n: 0,
      eyes: 0,
      patients: 0,
    });
  });

  it('are hidden as the rest of a share as well', () => {
    expect(hiddenOf(count('a', 'all', 'count', 97, 100), 5)).toEqual(['all count']);
  });

  it('hide what is known of few eyes or few patients', () => {
    const mean = rowsOf(
      { measure: 'a', group: 'x=1', n: 4, patients: 4, unit: 'D', method: 'mean-patient-t' },
      { mean: 0.5 },
    );
    expect(hiddenOf(mean, 5)).toEqual(['x=1 mean']);
  });
});

// 50 eyes with 47 and then 46 within: one that was within left the window for one that is not.
describe('eyes that can be told one by one', () => {
  const series = [
    ...rowsOf(
      { measure: 'monitoring:a/share', group: 'all', n: 50, patients: 50, unit: 'share', method: 'wilson-effective-n' },
      { share_running_to_50: 0.94, share_running_to_51: 0.92 },
    ),
    ...rowsOf(
      { measure: 'monitoring:a/share', group: 'all', n: 51, patients: 51, unit: '', method: 'log-likelihood-ratio' },
      { sum_at_50: 0.2, sum_at_51: 0.7 },
    ),
  ];

  it('are not, from neighbouring places of a series', () => {
    const places = ['share_running_to_50', 'share_running_to_51', 'sum_at_50', 'sum_at_51'];
    expect(hiddenOf(series, 5)).toEqual(places.map((place) => `all ${place}`));
  });

  it('are not, from a cumulative sum, whatever cell size is declared', () => {
    expect(hiddenOf(series, 0)).toEqual(['all sum_at_50', 'all sum_at_51']);
  });

  it('are not, from an operator’s share of which 3 eyes, or all but 3, are the numerator', () => {
    const about = { measure: 'funnel:a/share', n: 60, patients: 60, unit: 'share', method: 'wilson-effective-n' };
    const share = (group: string, value: number) => rowsOf({ ...about, group }, { share: value });
    const rows = [...share('surgeon=S1', 3 / 60), ...share('surgeon=S2', 57 / 60), ...share('surgeon=S3', 30 / 60)];
    expect(hiddenOf(rows, 5)).toEqual(['surgeon=S1 share', 'surgeon=S2 share']);
  });
});

describe('what would give a hidden count away', () => {
  it('is the next smallest count over the values of the field', () => {
    const rows = [
      ...count('a', 'all', 'count', 63, 200),
      ...count('a', 'x=1', 'count', 3, 50),
      ...count('a', 'x=2', 'count', 20, 50),
      ...count('a', 'x=3', 'count', 40, 100),
    ];
    expect(hiddenOf(rows, 5)).toEqual(['x=1 count', 'x=2 count']);
  });

  it('is the next smallest reason of a flow', () => {
    const rows = [
      ...count('flow:a', 'all', 'operated', 100),
      ...count('flow:a', 'all', 'no_visit', 2),
      ...count('flow:a', 'all', 'set_aside', 0),
      ...count('flow:a', 'all', 'not_recorded', 8),
      ...count('flow:a', 'all', 'analysed', 90),
    ];
    expect(hiddenOf(rows, 5)).toEqual(['all no_visit', 'all not_recorded']);
  });
});

describe('operators with few eyes', () => {
  it('are hidden in every group that names them', () => {
    const rows = ['surgeon=S1', 'surgeon=S2', 'surgeon=S1;technique=manual', 'surgeon=S2 vs S1'].flatMap((group) =>
      count('a', group, 'count', 60, 200),
    );
    expect(hiddenOf(rows, 0, new Set(['surgeon=S1']))).toEqual([
      'surgeon=S1 count',
      'surgeon=S1;technique=manual count',
      'surgeon=S2 vs S1 count',
    ]);
  });
});
