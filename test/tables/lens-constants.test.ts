import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { lensConstants } from '../../src/tables/lens-constants.js';
import { en } from '../../src/words/index.js';
import { auditRows } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const zeroing = { method: 'constant-zero-mean', unit: '' };

/** One lens whose constant is known, one without a declared constant, one with too few eyes. */
const made = [
  ...rowsOf(
    {
      measure: 'lens_constant:SRK/T',
      group: 'lens_model=A1',
      n: 24,
      missing: 2,
      patients: 20,
      note: 'provisional:constant',
      ...zeroing,
    },
    { constant: [119.0271, 118.8, 119.249] },
  ),
  ...rowsOf(
    {
      measure: 'lens_constant:SRK/T',
      group: 'lens_model=A1',
      n: 24,
      missing: 2,
      patients: 20,
      method: 'mean-patient-t',
    },
    {
      count_weak_power: 1,
      count_refused: 1,
      constant_used: 118.9,
      mean_used: [0.0989, -0.11, 0.31],
      change_mean_absolute: [-0.0338, -0.07, 0.002],
    },
  ),
  ...rowsOf(
    {
      measure: 'lens_constant:SRK/T',
      group: 'lens_model=A1',
      n: 24,
      missing: 2,
      unit: 'share',
      method: 'wilson-effective-n',
    },
    { 'share_within_0.50_used': [0.75, 0.551, 0.88], 'share_within_0.50_refitted': [0.7917, 0.5951, 0.9076] },
  ),
  ...rowsOf(
    { measure: 'lens_constant:SRK/T', group: 'lens_model=A1', n: 24, missing: 2, unit: 'eyes' },
    { 'count_within_0.50_used': 18, 'count_within_0.50_refitted': 19 },
  ),
  ...rowsOf(
    { measure: 'lens_constant:SRK/T', group: 'lens_model=B2', n: 9, note: 'not-estimable:few-eyes', ...zeroing },
    { constant: undefined },
  ),
  ...rowsOf(
    { measure: 'lens_constant:SRK/T', group: 'lens_model=B2', n: 9 },
    { count_weak_power: 2, count_refused: 0 },
  ),
  ...rowsOf(
    { measure: 'lens_constant:Haigis', group: 'all', n: 40, method: 'constant-zero-mean', unit: 'mm' },
    { constant: [1.3657, 1.2, 1.55] },
  ),
];
const table = lensConstants(indexResults([...auditRows, ...made]), planOf(), en);

describe('lens constants', () => {
  it('show the constant used, the one of zero mean error, and what becomes of the errors', () => {
    expect(cellsOf(table, 'A1')).toEqual([
      '24',
      '118.90',
      '119.03 (118.80 to 119.25)*',
      '0.10 (−0.11 to 0.31)',
      '−0.03 (−0.07 to 0.00)',
      '18/24, 75 (55 to 88)',
      '19/24, 79 (60 to 91)',
    ]);
    expect(table?.footnotes).toContain('* Provisional: fewer than 30 eyes.');
  });

  it('show no constant where too few eyes have the lens', () => {
    expect(cellsOf(table, 'B2').slice(0, 3)).toEqual(['9', '', 'not estimable†']);
    expect(table?.footnotes).toContain('† Fewer than 10 eyes: no constant is sought.');
  });

  it('stand in blocks of formulas, all eyes together where no lens is named', () => {
    expect(table?.rows.map(({ label }) => label)).toEqual(['SRK/T (A)', 'A1', 'B2', 'Haigis (a0, mm)', 'All eyes']);
    expect(cellsOf(table, 'All eyes')).toEqual(['40', '', '1.37 (1.20 to 1.55)', '', '', '', '']);
  });

  it('tell which eyes were left out of the search, over all lenses', () => {
    const notes = table?.footnotes.join('\n');
    expect(notes).toContain('with a lens weaker than 2 D, which tells too little of where it lies: SRK/T 3.');
    expect(notes).toContain('with biometry that is missing or beyond the limits: SRK/T 1.');
    expect(notes).toContain('not for choosing a lens');
  });

  it('are not tabulated where nothing was recomputed', () => {
    expect(lensConstants(indexResults(auditRows), planOf(), en)).toBeUndefined();
  });
});
