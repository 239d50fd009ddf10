import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { formulas } from '../../src/tables/formulas.js';
import { en } from '../../src/words/index.js';
import { auditRows, errorsOf } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

/** One formula against the primary one: differences, and for eyes of independent patients the textbook p. */
function compared(formula: string, hasTextbook: boolean) {
  const measure = `prediction_error:${formula}`;
  const about = { measure, n: 360, patients: 250, method: 'mean-patient-t' };
  const beside = (statistic: string, p: number) => [
    ...rowsOf({ ...about, unit: '' }, { [`p:${statistic}`]: p, [`df:${statistic}`]: 249 }),
    ...rowsOf({ ...about, unit: '', method: 'holm' }, { [`p_adjusted:${statistic}`]: 2 * p }),
  ];
  const textbook = { 'p_textbook:formula_difference_spread': 0.0123 };
  return [
    ...errorsOf(measure, 'all', 365),
    ...rowsOf({ ...about, unit: 'D²' }, { formula_difference_spread: [-0.0125, -0.0254, 0.0004] }),
    ...beside('formula_difference_spread', 0.058),
    ...(hasTextbook ? rowsOf({ ...about, unit: '', method: 'morgan-pitman-hc4' }, textbook) : []),
    ...rowsOf(about, { formula_difference_absolute: [0.015, -0.005, 0.035] }),
    ...rowsOf({ ...about, unit: 'share' }, { 'formula_difference_share_within_0.50': [-0.025, -0.0611, 0.0111] }),
    ...beside('formula_difference_share_within_0.50', 0.1745),
  ];
}

const made = (...rows: ReturnType<typeof compared>[]) =>
  formulas(indexResults([...auditRows, ...rows.flat()]), planOf(), en);

describe('formulas', () => {
  it('compares a formula with the primary one on the eyes that have both', () => {
    const table = made(compared('second', false));
    expect(table?.title).toBe(
      'Formulas on the same eyes at 3 months, else 1 month, each against the planned prediction (eligible eyes)',
    );
    expect(table?.rows[0]?.label).toBe('second less the planned prediction');
    expect(cellsOf(table, 'Eyes with both predictions')).toEqual(['360 eyes of 250 patients', '', '']);
    expect(cellsOf(table, 'Spread')).toEqual(['\u22120.013 (\u22120.025 to 0.000)', 't(249.0)', '0.058']);
    expect(cellsOf(table, 'Absolute error, D')).toEqual(['0.02 (\u22120.01 to 0.04)', '', '']);
    expect(cellsOf(table, 'Within ±0.50 D')).toEqual(['\u22122.5 (\u22126.1 to 1.1)', 't(249.0)', '0.175']); // 0.1745
  });

  it('adjusts p where several formulas are compared, and gives textbook forms where there are any', () => {
    const table = made(compared('second', true), compared('third', true));
    expect(table?.head.map(({ text }) => text).slice(3)).toEqual(['p', 'p, adjusted (Holm)', 'p, textbook form']);
    expect(cellsOf(table, 'Spread').slice(2)).toEqual(['0.058', '0.116', '0.012']);
    expect(cellsOf(table, 'Absolute error, D').slice(2)).toEqual(['', '', '']);
    expect(table?.footnotes.join(' ')).toContain('Morgan–Pitman with HC4');
  });

  it('is not made where the audit has one formula, or no eye has both', () => {
    expect(made()).toBeUndefined();
    expect(made(compared('second', false).map((row) => ({ ...row, n: 0 })))).toBeUndefined();
  });
});
