import { describe, expect, it } from 'vitest';
import { cellsOf, footnotesOf, madeUpSafety } from './made-up-safety.js';

const audit = await madeUpSafety();
const { results } = audit;
const value = (measure: string, statistic: string, group = 'all') => results.get(measure, group, statistic).value;

// Corrected before → after, in logMAR steps of the chart: T01 40→20 +0.301 (3), T02 20→32 −0.204 (−2), T03 25→40
// −0.204 (−2), T05 100→20 +0.699 (7), T06 50→20 +0.398 (4), T07 40→25 +0.204 (2), T08 40→20 (3), T09 63→20 +0.498
// (5), T11 80→20 +0.602 (6), T12 32→20 +0.204 (2). T04 (from a word) and T10 (to a word) are no lines.
describe('lines gained and lost', () => {
  it('are counted by fixed edges', () => {
    const counts = ['-3', '-2', '-1', '0', '1', '2', '3'].map((step) => value('cdva_change', `count_lines_${step}`));
    expect(counts).toEqual([0, 2, 0, 0, 0, 2, 6]);
    expect(value('cdva_change', 'count_lines_lost_2_or_more')).toBe(2);
    expect(value('cdva_change', 'count_lines_lost_3_or_more')).toBe(0);
    expect([value('cdva_change', 'n'), value('cdva_change', 'missing')]).toEqual([10, 2]);
  });

  it('leave low-vision words out as categories of their own', () => {
    expect(value('cdva_low_vision_change', 'count_from_low_vision')).toBe(1);
    expect(value('cdva_low_vision_change', 'count_to_low_vision')).toBe(1);
    expect(value('cdva_low_vision_change', 'count_measured_both')).toBe(10);
    const cells = cellsOf(audit, 'acuity-change');
    expect(cells.get('From a low-vision word to a measured acuity, eyes')).toEqual(['1', '0', '1']);
    expect(cells.get('Lost 2 lines, n/N, %')?.[2]).toMatch(/^2\/10, 20 \(/);
  });

  it('are explained', () => {
    expect(footnotesOf(audit, 'acuity-change')).toContain('2 lines from 0.19 to below 0.29');
    expect(footnotesOf(audit, 'acuity-change')).toContain('The cataract lowers acuity before surgery');
  });
});

// Distance eyes with measured values, uncorrected/corrected after, decimals: T01 1/1, T02 0.5/0.625, T03 0.8/0.5,
// T04 0.5/1, T06 1/1, T07 0.8/0.8, T08 1/1, T09 1/1, T12 1/1; T10 has a word. Product of the ratios
// 0.8·1.6·0.5 = 0.64, geometric mean of nine 0.64^(1/9); sums 7.6 and 7.925.
describe('indices', () => {
  it('of efficacy: uncorrected over corrected after surgery, distance-target eyes', () => {
    expect(value('efficacy_ratio', 'n')).toBe(9);
    expect(value('efficacy_ratio', 'geometric_mean')).toBeCloseTo(0.64 ** (1 / 9), 10);
    expect(value('efficacy_ratio', 'ratio_of_means')).toBeCloseTo(7.6 / 7.925, 10);
  });
});

// ../shared/spec/standards.md check 63: corrected 0.5, 0.8 → 1.0, 0.8: 1.3846 (ratio of means), 1.5000 (mean of
// ratios), 1.4142 (geometric).
describe('three estimators of one index', () => {
  it('are told apart', async () => {
    const two = await madeUpSafety('', [
      'T01,R,2025-01-06,old,m1,2,,yes,no,4.0,0,0,20/40,,20/20,,,',
      'T02,R,2025-01-07,old,m1,3,,yes,no,6.0,0,0,20/25,,20/25,,,',
    ]);
    const index = (statistic: string) => two.results.get('safety_index', 'all', statistic).value;
    expect(index('ratio_of_means')).toBeCloseTo(1.3846, 4);
    expect(index('mean')).toBeCloseTo(1.5, 10);
    expect(index('geometric_mean')).toBeCloseTo(2 ** 0.5, 4);
  });
});

describe('eyes that are not aimed at distance', () => {
  // T05 and T11 are aimed at −2.50 D: 20/200 and 20/125 uncorrected, near 20/25 and 20/20.
  it('stand apart from distance acuity, and have their near acuity', () => {
    expect([value('udva', 'n'), value('udva:near_target', 'n'), value('unva', 'n')]).toEqual([10, 2, 2]);
    expect(value('udva:near_target', 'mean')).toBeCloseTo((1 + Math.log10(125 / 20)) / 2, 10);
    const cells = cellsOf(audit, 'visual-acuity');
    expect([...cells.keys()]).toContain('Uncorrected near acuity after surgery, logMAR');
    expect(footnotesOf(audit, 'visual-acuity')).toContain('aimed at distance 10');
  });

  it('count substituted words', () => {
    expect([value('cdva', 'substituted'), value('cdva_before', 'substituted')]).toEqual([1, 1]);
  });
});
