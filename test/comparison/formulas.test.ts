import { describe, expect, it } from 'vitest';
import { formulaRows, sameEyes } from '../../src/comparison/formulas.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from '../statistics/reference-examples.js';

const about = { measure: 'prediction_error:second', group: 'all', eyes: 99, unit: 'D' };

/** Rows of a formula against the primary one, by statistic. */
function rowsOf(formula: readonly number[], primary: readonly number[], patients = formula.map((_, i) => i)) {
  const eyes = Int32Array.from(formula.keys());
  const same = sameEyes(Float64Array.from(formula), Float64Array.from(primary), Int32Array.from(patients), eyes);
  const rows = formulaRows(about, same, 0.95).flatMap((one) => one.rows);
  return new Map(rows.map((row) => [row.statistic, row]));
}

const value = (rows: ReturnType<typeof rowsOf>, statistic: string): number | undefined => rows.get(statistic)?.value;

describe.skipIf(!referencePresent)('with one eye a patient, textbook tests stand beside', () => {
  // R 4.2.2 t.test(paired = TRUE) of datasets::sleep: all values moved above 0, so that sizes are the values.
  it('absolute errors by the paired t', () => {
    const { input, expected, tolerance } = example('t-sleep');
    const above = (values: readonly number[]) => values.map((one) => one + 10);
    const rows = rowsOf(above(input.x), above(input.y));
    expect(agrees(value(rows, 'p:formula_difference_absolute'), expected.paired.p, tolerance)).toBe(true);
    expect(agrees(rows.get('formula_difference_absolute')?.ci_low, expected.paired.ci[0], tolerance)).toBe(true);
    expect(value(rows, 'df:formula_difference_absolute')).toBe(9);
    expect(value(rows, 'formula_difference_absolute')).toBeCloseTo(-1.58, 12);
  });

  // R 4.2.2 with sandwich 3.0.2, vcovHC(type = 'HC4'): peak flows of Bland and Altman 1986.
  it('spread by Morgan and Pitman with HC4', () => {
    const { input, expected, tolerance } = example('morgan-pitman');
    const rows = rowsOf(input.x, input.y);
    expect(agrees(value(rows, 'p_textbook:formula_difference_spread'), expected.hc4.p, tolerance)).toBe(true);
    expect(rows.get('p_textbook:formula_difference_spread')?.method).toBe('morgan-pitman-hc4');
  });

  // Fagerland, Lydersen & Laake 2017, chapter 8: an error of 0 is within 0.50 D, one of 1 is not.
  it('shares by McNemar, mid-p', () => {
    const { input, expected, tolerance } = example('paired-fagerland-cavo');
    const [[both, onlyRow], [onlyColumn, neither]] = input.table;
    const repeated = (n: number, pair: readonly [number, number]) => Array.from({ length: n }, () => pair);
    const pairs = [
      ...repeated(both, [0, 0]),
      ...repeated(onlyRow, [0, 1]),
      ...repeated(onlyColumn, [1, 0]),
      ...repeated(neither, [1, 1]),
    ];
    const rows = rowsOf(
      pairs.map(([formula]) => formula),
      pairs.map(([, primary]) => primary),
    );
    const statistic = 'formula_difference_share_within_0.50';
    expect(value(rows, statistic)).toBeCloseTo(expected.difference, 12);
    expect(agrees(value(rows, `p_textbook:${statistic}`), expected.p_midp, tolerance)).toBe(true);
  });
});

describe('formulas on the same eyes', () => {
  const formula = [0.1, -0.4, 0.3, 0.9, -0.2, 0.6, -0.7, 0.2];
  const primary = [0.2, -0.5, 0.1, 0.4, -0.3, 0.6, -0.1, 0.5];

  it('the spread is the mean difference of squares, each centred by its own formula', () => {
    const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
    const square = (values: readonly number[]) => mean(values.map((one) => (one - mean(values)) ** 2));
    const rows = rowsOf(formula, primary);
    expect(value(rows, 'formula_difference_spread')).toBeCloseTo(square(formula) - square(primary), 12);
    // A constant off by half a dioptre is not spread.
    const moved = rowsOf(
      formula.map((one) => one + 0.5),
      primary,
    );
    expect(value(moved, 'formula_difference_spread')).toBeCloseTo(square(formula) - square(primary), 12);
  });

  it('both eyes of a patient are one piece, and no textbook test is offered', () => {
    const rows = rowsOf([...formula, ...formula], [...primary, ...primary], [...formula.keys(), ...formula.keys()]);
    const single = rowsOf(formula, primary);
    for (const statistic of ['formula_difference_absolute', 'formula_difference_spread']) {
      expect(rows.get(statistic)?.ci_low).toBeCloseTo(single.get(statistic)?.ci_low as number, 12);
      expect(value(rows, `df:${statistic}`)).toBe(7);
      expect(rows.get(`p_textbook:${statistic}`)).toBeUndefined();
    }
  });

  it('eyes without one of the errors are left out and counted', () => {
    const rows = rowsOf([...formula, 0.3, Number.NaN], [...primary, Number.NaN, 0.3]);
    expect(rows.get('formula_difference_absolute')).toMatchObject({ n: 8, eyes: 99, patients: 8 });
  });

  it('fewer than 5 patients give the difference alone; equal formulas no test', () => {
    const few = rowsOf(formula.slice(0, 4), primary.slice(0, 4));
    expect(few.get('formula_difference_absolute')).toMatchObject({
      ci_low: undefined,
      note: 'not-estimable:few-patients',
    });
    expect(few.has('p:formula_difference_absolute')).toBe(false);
    const same = rowsOf(formula, formula);
    expect(value(same, 'formula_difference_absolute')).toBe(0);
    expect(same.has('p:formula_difference_absolute')).toBe(false);
  });
});
