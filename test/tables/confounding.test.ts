import { describe, expect, it } from 'vitest';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { cohortPairs } from '../../src/tables/cohort-pairs.js';
import { concernsOf } from '../../src/tables/concerns.js';
import { confounding } from '../../src/tables/confounding.js';
import { en } from '../../src/words/index.js';
import { auditRows } from './audit.js';
import { comparedRows, design, pair } from './compared.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const made = (rows: readonly ResultRow[] = comparedRows) => confounding(indexResults(rows), planOf(), en);
const table = made();

/** Ids of what is told, with some rows of the comparison changed. */
function concerned(change: (row: ResultRow) => Partial<ResultRow>): readonly string[] {
  const results = indexResults(comparedRows.map((row) => (row.group === pair ? { ...row, ...change(row) } : row)));
  return cohortPairs(results, en).flatMap((one) => concernsOf(results, one, en).map(({ id }) => id));
}

describe('confounding', () => {
  it('crosses the cohorts with who operated, and tells how much of the mix is common', () => {
    expect(table?.head.map(({ text, n }) => [text, n])).toEqual([
      ['Characteristic', undefined],
      ['manual', 213],
      ['laser & co', 206],
      ['laser & co against manual', undefined],
    ]);
    expect(cellsOf(table, 'S1')).toEqual(['200', '40', '']);
    expect(cellsOf(table, 'S2')).toEqual(['13', '166', '']);
    // 40/206 of S1 in both, 13/213 of S2: 0.1942 + 0.0610 = 0.2552
    expect(cellsOf(table, 'Mix in common, %')).toEqual(['', '', '25.5*']);
    expect(table?.footnotes).toContain('* Less than 75 % in common.');
  });

  it('tells the time that cohorts share, and the patients that form the design', () => {
    expect(cellsOf(table, 'Months with operations in both')).toEqual(['', '', '3 of 12*']);
    expect(cellsOf(table, 'In both cohorts')).toEqual(['', '', '19']);
    expect(cellsOf(table, 'Only in manual')).toEqual(['', '', '120']);
    expect(cellsOf(table, 'Only in laser & co')).toEqual(['', '', '121']);
  });

  it('tells when eyes were seen, the difference marked beyond 0.1', () => {
    expect(cellsOf(table, 'Corrected acuity')).toEqual(['89 (24 to 131)', '89 (24 to 131)', '6 (1 to 12)†']);
    expect(table?.footnotes).toContain('† Imbalance: a standardised difference beyond 0.1.');
  });

  it('counts years where no day is known', () => {
    const undated = comparedRows.filter(({ measure }) => measure !== 'overlap');
    const years = rowsOf({ measure: 'overlap', group: pair, n: 419, unit: 'years' }, { overlap_years: 2, years: 2 });
    expect(cellsOf(made([...undated, ...years]), 'Years with operations in both')).toEqual(['', '', '2 of 2']);
  });

  it('is not made where no cohorts are compared', () => {
    expect(made(auditRows)).toBeUndefined();
  });
});

describe('concerns', () => {
  it('are surgeon, time and follow-up here', () => {
    expect(concerned(() => ({}))).toEqual(['confounded', 'operated-apart', 'seen-apart']);
  });

  it('are none where cohorts are alike', () => {
    expect(
      concerned((row) => ({ note: '', value: /^(overlap|standardised)/.test(row.statistic) ? 0 : row.value })),
    ).toEqual([]);
  });

  it('follow the note of the row, nothing in common told as such', () => {
    const results = indexResults(
      comparedRows.map((row) => (row.statistic === 'overlap:surgeon' ? { ...row, value: 0, note: 'no-overlap' } : row)),
    );
    const [first] = cohortPairs(results, en);
    if (!first) throw new RangeError('no pair');
    expect(concernsOf(results, first, en)[0]?.text).toBe(
      'laser & co and manual have no surgeon in common: a difference between them may as well be one of surgeon, and no table can tell.',
    );
  });

  // Rubin 2001: 0.25; the tables mark an imbalance from 0.1 on.
  it('tell of follow-up times from a standardised difference of 0.25 on', () => {
    const days = (value: number) =>
      concerned((row) => (row.statistic === 'standardised_difference' ? { value } : {})).includes('seen-apart');
    expect([days(0.25), days(0.26), days(-0.26)]).toEqual([false, true, true]);
  });

  it('tell of cohorts that hold the first eyes of a surgeon', () => {
    const early = (group: string, value: number, note: string) =>
      rowsOf({ measure: 'confounding', group, n: 206, unit: 'eyes', method: 'count', note }, { early_eyes: value });
    const rows = [
      ...comparedRows,
      ...early('technique=laser & co', 20, 'learning'),
      ...early('technique=manual', 0, ''),
    ];
    const [first] = cohortPairs(indexResults(rows), en);
    const told = first && concernsOf(indexResults(rows), first, en).find(({ id }) => id === 'learning');
    expect(told?.text).toContain('(laser & co: 20 of 206): a difference between cohorts may be one of practice.');
    expect(cellsOf(made(rows), 'Among a surgeon’s first 20').slice(0, 2)).toEqual(['0 of 206', '20 of 206†']);
  });

  it('tell the year only where no months do', () => {
    const uneven = (row: ResultRow): Partial<ResultRow> => (row.statistic === 'overlap:year' ? { note: 'uneven' } : {});
    expect(concerned(uneven).filter((id) => id === 'confounded')).toHaveLength(1);
    const even = (row: ResultRow): Partial<ResultRow> => (row.measure === 'overlap' ? { note: '' } : uneven(row));
    expect(concerned(even).filter((id) => id === 'confounded')).toHaveLength(2);
  });
});

describe('cohortPairs', () => {
  it('reads names that hold the words of a comparison', () => {
    const group = 'technique=laser%20vs%20knife vs manual';
    const [found] = cohortPairs(indexResults(design.map((row) => ({ ...row, group }))), en);
    expect(found).toEqual({
      group,
      field: 'Technique',
      compared: { group: 'technique=laser%20vs%20knife', label: 'laser vs knife' },
      reference: { group: 'technique=manual', label: 'manual' },
    });
  });

  it('refuses a group that compares nothing', () => {
    const rows = design.map((row) => ({ ...row, group: 'technique=manual' }));
    expect(() => cohortPairs(indexResults(rows), en)).toThrow('expected field=cohort vs reference');
  });
});
