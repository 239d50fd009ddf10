// ../shared/spec/3-measures.md, low vision: counting fingers and hand movements enter means by the table's value; light
// perception and none never do, and medians use their rank. Shares go by line: nominal tenth + 0.005 logMAR.
import { describe, expect, it } from 'vitest';
import { acuityRows } from '../../src/analysis/acuity.js';
import { acuityLines } from '../../src/measures/profiles.js';
import { rowIn, sampleFrom } from './sample.js';

/** Light perception, as a rank that is worse than every acuity. */
const light = Number.POSITIVE_INFINITY;
const rowsOf = (values: readonly number[]) => acuityRows(sampleFrom(values, { unit: 'logMAR', lines: acuityLines }));

describe('means and medians', () => {
  const rows = rowsOf([0, 0.2, 0.4, 1.9, light]);

  it('leave light perception out of the mean, and count hand movements by the table', () => {
    expect(rowIn(rows, 'mean')).toMatchObject({ value: (0.2 + 0.4 + 1.9) / 4, n: 4, eyes: 5 });
    expect(rowIn(rows, 'sd').n).toBe(4);
  });

  it('count light perception as worse than every acuity in the median', () => {
    expect(rowIn(rows, 'median')).toMatchObject({ value: 0.4, n: 5 });
    expect(rowIn(rows, 'q75').value).toBe(1.9);
  });

  it('do not print a rank: what falls on light perception is not estimable', () => {
    expect(rowIn(rows, 'max')).toMatchObject({ value: undefined, note: 'not-estimable:light-perception' });
    const blind = rowsOf([0.1, light, light]);
    expect(rowIn(blind, 'median')).toMatchObject({ value: undefined, ci_low: undefined, ci_high: undefined });
  });

  it('count every eye that has an acuity as present', () => {
    expect([rowIn(rows, 'n').value, rowIn(rows, 'missing').value]).toEqual([5, 0]);
    expect(rowIn(rowsOf([0.1, Number.NaN, light]), 'missing').value).toBe(1);
  });
});

describe('cumulative shares', () => {
  // logMAR of 20/20 is 0, of 20/25 0.09691, of 20/40 0.30103, of 20/200 1; 0.3 + 0.005 is the last of the line 20/40.
  it('reach a line by its number, and light perception reaches none', () => {
    const rows = rowsOf([-0.1, 0, 0.09691, 0.304, 0.306, 1, 1.9, light]);
    const counts = Object.fromEntries(
      acuityLines.map((line) => [line, rowIn(rows, `count_at_or_better_${line}`).value]),
    );
    expect(counts).toEqual({
      '20/12.5': 0,
      '20/16': 1,
      '20/20': 2,
      '20/25': 3,
      '20/32': 3,
      '20/40': 4,
      '20/63': 5,
      '20/100': 5,
      '20/200': 6,
    });
    expect(rowIn(rows, 'share_at_or_better_20/40')).toMatchObject({ value: 4 / 8, n: 8 });
  });

  it('never fall as the line gets easier', () => {
    const rows = rowsOf([0.31, -0.2, 0.7, 0.18, 0.05, 1.3, 0.42]);
    const shares = acuityLines.map((line) => rowIn(rows, `share_at_or_better_${line}`).value as number);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});
