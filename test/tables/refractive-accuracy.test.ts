import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { refractiveAccuracy } from '../../src/tables/refractive-accuracy.js';
import { en } from '../../src/words/index.js';
import { auditRows, errorsOf, groups, replaced, without } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const plan = planOf();
const table = refractiveAccuracy(indexResults(auditRows), plan, en);

// Expected texts: half away from zero on the values of audit.ts, worked by hand.
describe('refractiveAccuracy', () => {
  it('heads each cohort and all eyes with the eyes analysed', () => {
    expect(table?.head).toEqual([
      { text: 'Statistic (95 % CI)' },
      { text: 'manual', n: 187 },
      { text: 'laser & co', n: 184 },
      { text: 'All eyes', n: 371 },
    ]);
    expect(table?.title).toBe(
      'Refractive accuracy at 3 months, else 1 month: error of the spherical equivalent, spectacle plane (eligible eyes)',
    );
  });

  it('shows every estimate with its interval', () => {
    expect(cellsOf(table, 'Mean')[2]).toBe('\u22120.06 (\u22120.10 to \u22120.01)');
    expect(cellsOf(table, 'SD')[2]).toBe('0.44 (0.40 to 0.50)');
    expect(cellsOf(table, 'Median')[2]).toBe('0.00 (\u22120.06 to 0.02)');
    expect(cellsOf(table, 'Mean absolute error')[2]).toBe('0.35 (0.32 to 0.38)');
    expect(cellsOf(table, 'Root mean square')[2]).toBe('0.45 (0.41 to 0.50)');
    expect(cellsOf(table, 'Range')[2]).toBe('\u22121.13 to 2.00');
  });

  it('shows shares with numerator, denominator and interval', () => {
    expect(cellsOf(table, 'Within ±0.50 D')).toEqual([
      '140/187, 74.9 (70.3 to 79.1)', // 0.74866
      '138/184, 75.0 (70.3 to 79.1)',
      '278/371, 74.9 (70.3 to 79.1)', // 0.74933
    ]);
  });

  it('keeps prediction, centred and target error in blocks of their own', () => {
    const labels = table?.rows.filter(({ indent }) => indent === 0).map(({ label }) => label);
    expect(labels).toEqual([
      'Prediction error, D (achieved − predicted)',
      'Prediction error less the mean of its lens model, D',
      'Target error, D (achieved − intended by the surgeon)',
    ]);
  });

  it('adds a block for each further formula', () => {
    const formula = groups.flatMap((group) => errorsOf('prediction_error:Formula 7', group, 300));
    const more = refractiveAccuracy(indexResults([...auditRows, ...formula]), plan, en);
    expect(more?.rows.some(({ label }) => label === 'Prediction error, Formula 7, D (achieved − predicted)')).toBe(
      true,
    );
    expect(cellsOf(more, 'Eyes (missing)', 3)).toEqual(['300 (3)', '300 (3)', '300 (3)']);
  });

  it('leaves a block out that no eye has, with its footnote', () => {
    const uncentred = without(auditRows, ({ measure }) => measure === 'prediction_error_centred');
    const less = refractiveAccuracy(indexResults(uncentred), plan, en);
    expect(less?.rows.filter(({ indent }) => indent === 0)).toHaveLength(2);
    expect(table?.footnotes.some((note) => note.startsWith('Centred:'))).toBe(true);
    expect(less?.footnotes.some((note) => note.startsWith('Centred:'))).toBe(false);
  });

  it('is not made where no eye has an error', () => {
    const bare = without(auditRows, ({ measure }) => /^(prediction|target)_error/.test(measure));
    expect(refractiveAccuracy(indexResults(bare), plan, en)).toBeUndefined();
  });

  it('fails when a row is not there', () => {
    const holed = without(auditRows, (row) => row.measure === 'target_error' && row.statistic === 'root_mean_square');
    const attempt = () => refractiveAccuracy(indexResults(holed), plan, en);
    expect(attempt).toThrow('results: no row target_error|technique=manual|root_mean_square');
  });

  it('tells visit, follow-up, eyes, patients, and who is left out', () => {
    expect(table?.footnotes).toContain(
      'Outcome visit: 3 months, else 1 month. Follow-up in days, spherical equivalent, median (range): ' +
        'manual 89 (24 to 131), 187 eyes of 250 patients; laser & co 89 (24 to 131), 184 eyes of 250 patients; ' +
        'All eyes 89 (24 to 131), 371 eyes of 250 patients.',
    );
    expect(table?.footnotes).toContain(
      'Spherical equivalent: of 421 eyes operated these are left out: Axial length over 30 mm 2; visit not yet due 12; ' +
        'no examination at the visit 21; not recorded 9; recorded, but set aside as impossible 2; ' +
        'neither prediction nor target 4.',
    );
  });

  it('says that follow-up is not given where examinations bear a label only', () => {
    const labelled = groups.flatMap((group) =>
      rowsOf({ measure: 'follow_up_days', group, n: 0, unit: 'days', note: 'not-estimable:no-eyes' }, { n: 0 }),
    );
    const told = refractiveAccuracy(indexResults(replaced(auditRows, labelled)), plan, en);
    expect(told?.footnotes.join(' ')).toContain(
      'median (range): manual not given; laser & co not given; All eyes not given.',
    );
  });
});
