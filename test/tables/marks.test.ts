import { describe, expect, it } from 'vitest';
import { comparisonNotes } from '../../src/comparison/codes.js';
import { indexResults } from '../../src/results/index.js';
import { estimateNotes } from '../../src/statistics/estimate.js';
import { marksOf } from '../../src/tables/marks.js';
import { refractiveAccuracy } from '../../src/tables/refractive-accuracy.js';
import { en } from '../../src/words/index.js';
import { auditRows, replaced } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const manual = { measure: 'prediction_error', group: 'technique=manual', n: 12, patients: 12 };

/** The accuracy table with some rows of the manual cohort in place of those of the made-up audit. */
function withManual(...changes: readonly (readonly ReturnType<typeof rowsOf>[number][])[]) {
  return refractiveAccuracy(indexResults(replaced(auditRows, changes.flat())), planOf(), en);
}

describe('small samples', () => {
  // Clopper–Pearson, 12 of 12: lower limit 0.025^(1/12) = e^(−3.68888/12) = 0.7353 (arithmetic).
  it('show 12 of 12 with its lower limit', () => {
    const share = { ...manual, unit: 'share', method: 'exact-patients' };
    const table = withManual(rowsOf(share, { 'share_within_0.50': [1, 0.7353, 1], 'count_within_0.50': 12 }));
    expect(cellsOf(table, 'Within ±0.50 D')[0]).toBe('12/12, 100 (74 to 100)');
    expect(table?.footnotes.join(' ')).toContain(
      'exact shares of 0 or 100 % by Clopper–Pearson with the number of patients',
    );
  });

  it('mark few patients behind each cell, once in the footnotes', () => {
    const note = 'few-patients';
    const table = withManual(
      rowsOf({ ...manual, method: 'mean-patient-t', note }, { mean: [0.1, -0.2, 0.4] }),
      rowsOf({ ...manual, method: 'log-jackknife-t', note }, { sd: [0.3, 0.2, 0.5] }),
    );
    expect(cellsOf(table, 'Mean')).toEqual([
      '0.10 (\u22120.20 to 0.40)*',
      '\u22120.06 (\u22120.10 to \u22120.01)',
      '\u22120.06 (\u22120.10 to \u22120.01)',
    ]);
    expect(table?.footnotes.filter((text) => text.startsWith('* '))).toEqual([
      '* Few patients (5 to 9): read with care.',
    ]);
  });

  it('say that a value or an interval is not estimable, and why', () => {
    const table = withManual(
      rowsOf({ ...manual, n: 1, note: 'not-estimable:one-eye' }, { sd: undefined }),
      rowsOf({ ...manual, n: 1, note: 'not-estimable:few-patients' }, { mean: 0.1 }),
    );
    expect(cellsOf(table, 'Mean')[0]).toBe('0.10*');
    expect(cellsOf(table, 'SD')[0]).toBe('not estimable†');
    expect(table?.footnotes).toContain('* Fewer than 5 patients: no interval is given.');
    expect(table?.footnotes).toContain('† Not estimable: one eye has no spread.');
  });

  it('give no percentage without an interval', () => {
    const share = { ...manual, n: 2, unit: 'share', note: 'not-estimable:few-patients' };
    const table = withManual(rowsOf(share, { 'share_within_0.50': 1, 'count_within_0.50': 2 }));
    expect(cellsOf(table, 'Within ±0.50 D')[0]).toBe('2/2*');
  });

  it('give several marks to a cell with several notes', () => {
    const notes = 'few-patients;heavy-tails';
    const table = withManual(rowsOf({ ...manual, method: 'log-jackknife-t', note: notes }, { sd: [0.3, 0.2, 0.5] }));
    expect(cellsOf(table, 'SD')[0]).toBe('0.30 (0.20 to 0.50)*†');
  });

  it('tell notes on a method without a mark', () => {
    const share = { ...manual, unit: 'share', method: 'wilson-effective-n', note: 'icc:whole-audit' };
    const table = withManual(rowsOf(share, { 'share_within_0.50': [0.75, 0.4, 0.9] }));
    expect(cellsOf(table, 'Within ±0.50 D')[0]).toBe('140/12, 75 (40 to 90)');
    expect(table?.footnotes.join(' ')).toContain('the correlation of fellow eyes is that of the whole audit');
  });
});

describe('marksOf', () => {
  it('fails on a note without words', () => {
    const rows = rowsOf({ measure: 'made_up', n: 1, note: 'made-up' }, { mean: 1 });
    expect(() => marksOf(rows, en)).toThrow('marksOf: note "made-up" has no words');
  });

  it('has words for every note of an estimate', () => {
    const told = { ...en.tables.notes.marked, ...en.tables.notes.unmarked };
    expect(Object.keys(estimateNotes).filter((code) => !(code in told))).toEqual([]);
  });

  it('has words for every note of a comparison, or tells it elsewhere', () => {
    const told = { ...en.tables.notes.marked, ...en.tables.notes.unmarked };
    // Verdict and primary are read as cells and labels; a collinear covariate is named.
    const elsewhere = ['primary', 'verdict', 'not-estimable:collinear'];
    const codes = Object.keys(comparisonNotes).filter((code) => !elsewhere.includes(code));
    expect(codes.filter((code) => !(code in told))).toEqual([]);
    const silent = rowsOf({ measure: 'made_up', n: 1, note: 'primary:k=2;verdict:better' }, { mean: 1 });
    expect(marksOf(silent, en).behind(silent)).toBe('');
  });

  it('doubles its symbols when there are more notes than symbols', () => {
    const codes = Object.keys(en.tables.notes.marked);
    const marks = marksOf(rowsOf({ measure: 'made_up', n: 1, note: codes.join(';') }, { mean: 1 }), en);
    expect([...marks.symbols.values()].slice(0, 9)).toEqual(['*', '†', '‡', '§', '‖', '¶', '#', '**', '††']);
    expect(new Set(marks.symbols.values()).size).toBe(codes.length);
  });
});
