import { describe, expect, it } from 'vitest';
import { verdicts } from '../../src/comparison/verdict.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { verdictSentences } from '../../src/text/verdicts.js';
import { en } from '../../src/words/index.js';
import { auditRows } from '../tables/audit.js';
import { comparedRows, pair } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';

const statistics = { ...planOf().statistics, margins: { 'cdva/mean': 0.05 } };
const told = (rows: readonly ResultRow[] = comparedRows) =>
  verdictSentences(indexResults(rows), planOf({ statistics }), en);

/** The acuity primary with another note, in place of the one it has. */
const acuity = (change: Partial<ResultRow>): readonly ResultRow[] =>
  comparedRows.map((row) =>
    row.group === pair && row.measure === 'cdva' && row.statistic === 'difference_mean' ? { ...row, ...change } : row,
  );

describe('verdictSentences', () => {
  it('say one plain sentence for each primary, with its difference and interval', () => {
    expect(told()[0]).toBe(
      'Prediction error within ±0.50 D: laser & co is better than manual; difference 10.5 percentage points (97.5 % CI 2.1 to 18.9).',
    );
  });

  it('tell of an open question what these eyes could have shown, and how many the margin needs', () => {
    expect(told()[1]).toBe(
      'Corrected acuity, mean: laser & co against manual is inconclusive; difference 0.01 logMAR (97.5 % CI \u22120.06 to 0.08). ' +
        'The margin is 0.05 logMAR. ' +
        'The smallest difference that this many eyes would show with 80 % power is 0.10 logMAR. ' +
        'A difference of 0.05 logMAR needs 1,544 eyes in both cohorts together.',
    );
  });

  it('end by saying that the rest has no verdict', () => {
    expect(told()).toHaveLength(3);
    expect(told()[2]).toBe('All other comparisons are exploratory: they have intervals and no verdict.');
  });

  it.each(verdicts.map((verdict) => [verdict] as const))('hold the words of the verdict table: %s', (verdict) => {
    const sentence = told(acuity({ note: `primary:k=2;verdict:${verdict}` }))[1] ?? '';
    for (const word of en.tables.comparison.verdicts[verdict].split(/,? but |, | \(/)) {
      expect(sentence).toContain(word.replace(/^(no difference shown|equivalent).*/, '$1').replace(/\)$/, ''));
    }
    expect(sentence).not.toContain('significant');
  });

  it('say that nothing can be said, and why', () => {
    const bare = { value: undefined, ci_low: undefined, ci_high: undefined };
    expect(told(acuity({ ...bare, note: 'design:mixed;not-estimable:few-patients;primary:k=2' }))[1]).toBe(
      'Corrected acuity, mean, laser & co against manual: not estimable. Fewer than 5 patients: no interval is given.',
    );
  });

  it('tell a vector with its region, and a ratio as such', () => {
    const rows = comparedRows.map((row) => {
      if (row.group !== pair) return row;
      if (row.measure === 'refractive_cylinder_after' && row.statistic.startsWith('difference_')) {
        return { ...row, note: 'primary:k=2;verdict:different' };
      }
      return row.statistic === 'ratio_sd' ? { ...row, note: 'primary:k=2;verdict:no-difference-shown' } : row;
    });
    expect(told(rows)).toEqual(
      expect.arrayContaining([
        'Prediction error, SD: no difference shown between laser & co and manual (this is not evidence of equality); ratio 0.88 (97.5 % CI 0.80 to 0.95).',
        'Refractive cylinder, centroid: laser & co and manual are different; difference 0.10 D @ 180° (semi-axes of its 97.5 % region 0.13 and 0.10 D).',
      ]),
    );
  });

  it('are none where the audit compares nothing', () => {
    expect(told(auditRows)).toEqual([]);
  });
});
