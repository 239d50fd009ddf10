import { describe, expect, it } from 'vitest';
import { bandRows, sameEyes } from '../../src/comparison/formulas.js';
import { indexResults } from '../../src/results/index.js';
import { formulasByBand } from '../../src/tables/formulas-by-band.js';
import { en } from '../../src/words/index.js';
import { auditRows } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

// Six eyes of six patients; the formula is off by 0.25 D more than the primary one, the other way round in the last.
const primary = Float64Array.of(0.25, 0.5, -0.25, 0, 0.75, -0.5);
const formula = Float64Array.of(0.5, 0.75, 0, 0.25, 1, -0.75);
const eyes = Int32Array.of(0, 1, 2, 3, 4, 5);
const about = { measure: 'prediction_error:second', group: 'axial_length=(26,-)', eyes: 6, unit: 'D' };
const rows = bandRows(about, sameEyes(formula, primary, eyes, eyes), 0.95);
const value = (statistic: string) => rows.find((row) => row.statistic === statistic)?.value;

describe('formulas in a band', () => {
  it('are compared on the eyes that have both errors, means raw', () => {
    // (0.5 + 0.75 + 0 + 0.25 + 1 − 0.75)/6 and (0.25 + 0.5 − 0.25 + 0 + 0.75 − 0.5)/6
    expect(value('same_eyes_mean')).toBeCloseTo(1.75 / 6, 12);
    expect(value('same_eyes_mean_primary')).toBeCloseTo(0.75 / 6, 12);
    // |error|: 0.25 more in five eyes but the third, which has 0.25 less: (5 · 0.25 − 0.25)/6
    expect(value('formula_difference_absolute')).toBeCloseTo(1 / 6, 12);
    // Within ±0.50: the primary five of six, the formula eyes 1, 3, 4: a difference of −2/6.
    expect(value('formula_difference_share_within_0.50')).toBeCloseTo(-2 / 6, 12);
    expect(rows.map(({ statistic }) => statistic).filter((name) => name.startsWith('p'))).toEqual([]);
  });

  it('keep limits of a difference of shares inside what is possible', () => {
    const apart = sameEyes(Float64Array.of(0, 0, 0, 0, 0, 2), Float64Array.of(2, 2, 2, 2, 2, 0), eyes, eyes);
    const share = bandRows(about, apart, 0.95).at(-1);
    expect(share?.value).toBeCloseTo(4 / 6, 12);
    expect(share?.ci_high).toBe(1);
  });
});

describe('table of formulas by band', () => {
  const made = (group: string, n: number) =>
    rowsOf(
      { measure: 'prediction_error:second', group, n, method: 'mean-patient-t' },
      {
        same_eyes_mean: [0.15, 0.05, 0.25],
        same_eyes_mean_primary: [-0.1, -0.2, 0],
        formula_difference_spread: [0.01, -0.02, 0.04],
        formula_difference_absolute: [0.03, 0.01, 0.05],
        'formula_difference_share_within_0.50': [-0.05, -0.1, 0],
      },
    );
  const all = rowsOf(
    { measure: 'prediction_error:second', n: 360, method: 'mean-patient-t' },
    { n: 360, formula_difference_absolute: [0.02, 0, 0.04] },
  );
  const table = formulasByBand(
    indexResults([...auditRows, ...all, ...made('axial_length=(-,22)', 40), ...made('k_mean=[42,46]', 300)]),
    planOf(),
    en,
  );

  it('has a block a formula and field, a row a band', () => {
    expect(table?.rows.map(({ label }) => label)).toEqual([
      'second, by Axial length, mm',
      '< 22',
      'second, by Mean keratometry, D',
      '42 to 46',
    ]);
    expect(cellsOf(table, '< 22').slice(0, 3)).toEqual([
      '40',
      '0.15 (0.05 to 0.25)',
      '\u22120.10 (\u22120.20 to 0.00)',
    ]);
    expect(table?.footnotes.join(' ')).toContain('Bands are not tested');
  });

  it('is not made where the audit has one formula', () => {
    expect(formulasByBand(indexResults(auditRows), planOf(), en)).toBeUndefined();
  });
});
