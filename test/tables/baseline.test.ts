import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { baseline } from '../../src/tables/baseline.js';
import { en } from '../../src/words/index.js';
import { auditRows, groups, replaced } from './audit.js';
import { comparedRows } from './compared.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const table = baseline(indexResults(auditRows), planOf(), en);

describe('baseline', () => {
  it('describes each cohort: mean and SD, median and range, shares with their counts', () => {
    expect(table?.head.map(({ n }) => n)).toEqual([undefined, 213, 206, 419]);
    expect(cellsOf(table, 'Patients')).toEqual(['139', '140', '268']);
    expect(cellsOf(table, 'Mean (SD)')[0]).toBe('71.3 (8.3)'); // years, one decimal: 71.25, 8.25
    expect(cellsOf(table, 'Median (range)')[0]).toBe('71.3 (21.0 to 90.0)');
    expect(cellsOf(table, 'Female')[0]).toBe('150/250, 60.0 (53.8 to 65.9)'); // 0.5375, 0.6587
    expect(cellsOf(table, 'Mean (SD)', 1)[0]).toBe('23.51 (8.25)'); // millimetres, two decimals: 23.505
  });

  it('leaves out what no eye has', () => {
    expect(table?.rows.map(({ label }) => label)).not.toContain('Toric lens, n/N, % (95 % CI)');
    expect(table?.rows.some(({ label }) => label.startsWith('Lens power'))).toBe(false);
  });

  it('names the plane of what is measured at the cornea', () => {
    expect(table?.rows.map(({ label }) => label)).toContain('Corneal cylinder, D (keratometry, corneal plane)');
  });

  it('counts missing values, in all and by cohort', () => {
    expect(table?.footnotes.join(' ')).toContain(
      'Missing: age 3 (manual 1, laser & co 2); axial length 3 (manual 1, laser & co 2); corneal cylinder 9 (manual 9, laser & co 9);',
    );
  });

  it('tells of no interval that it does not show', () => {
    const rows = rowsOf(
      {
        measure: 'age',
        group: 'technique=manual',
        n: 40,
        unit: 'years',
        method: 'log-jackknife-t',
        note: 'heavy-tails',
      },
      { sd: [8.25, 7, 9] },
    );
    const heavy = baseline(indexResults(replaced(auditRows, rows)), planOf(), en);
    expect(heavy?.footnotes).toEqual(table?.footnotes);
    expect(cellsOf(heavy, 'Mean (SD)')[0]).toBe('71.3 (8.3)');
  });

  it('marks few patients', () => {
    const about = { measure: 'age', group: 'technique=manual', n: 7, unit: 'years', note: 'few-patients' };
    const few = baseline(indexResults(replaced(auditRows, rowsOf(about, { mean: 71 }))), planOf(), en);
    expect(cellsOf(few, 'Mean (SD)')[0]).toBe('71.0 (8.3)*');
  });

  it('says that the class of 90 and above is counted as 90', () => {
    expect(table?.footnotes).toContain('Ages above 89 are counted as 90.');
    const younger = rowsOf({ measure: 'age', n: 416, missing: 3, unit: 'years' }, { max: 88 });
    const other = baseline(indexResults(replaced(auditRows, younger)), planOf(), en);
    expect(other?.footnotes).not.toContain('Ages above 89 are counted as 90.');
  });

  it('has a column of standardised differences where cohorts are compared, marked beyond 0.1, and no p', () => {
    const compared = baseline(indexResults(comparedRows), planOf(), en);
    expect(compared?.head.at(-1)).toEqual({ text: 'Standardised difference' });
    expect(compared?.head.some(({ text }) => text === 'p')).toBe(false);
    expect(cellsOf(compared, 'Mean (SD)').at(-1)).toBe('0.03'); // 0.034
    expect(cellsOf(compared, 'Median (range)').at(-1)).toBe('');
    expect(cellsOf(compared, 'Female').at(-1)).toBe('\u22120.15*');
    expect(compared?.footnotes).toContain('* Imbalance: a standardised difference beyond 0.1.');
    expect(compared?.footnotes.some((note) => note.startsWith('Standardised difference: of means, or shares'))).toBe(
      true,
    );
  });

  it('is not made without eligible eyes', () => {
    const none = groups.flatMap((group) => rowsOf({ measure: 'flow:eligible', group, n: 0 }, { analysed: 0 }));
    expect(baseline(indexResults(replaced(auditRows, none)), planOf(), en)).toBeUndefined();
  });
});
