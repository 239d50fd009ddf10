import { describe, expect, it } from 'vitest';
import { comparisonMethods } from '../../src/comparison/codes.js';
import type { Plan } from '../../src/records/plan.js';
import { indexResults } from '../../src/results/index.js';
import { estimateMethods } from '../../src/statistics/estimate.js';
import { methods } from '../../src/text/methods.js';
import { en } from '../../src/words/index.js';
import { planOf as declaredPlan } from '../findings/plan.js';
import { auditRows, without } from '../tables/audit.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';
import { rowsOf } from '../tables/rows.js';

const written = (rows = auditRows, sections: Partial<Plan> = {}) => methods(indexResults(rows), planOf(sections), en);
const text = written();

describe('methods', () => {
  it('tells the audit: eyes, visits, exclusions', () => {
    expect(text).toContain('421 eyes of 268 patients were operated; 153 patients had both eyes operated.');
    expect(text).toContain('“3 months” (days 46 to 135 after surgery), else “1 month” (days 21 to 45 after surgery)');
    expect(text).toContain('Excluded, in this order: Axial length over 30 mm.');
  });

  it('tells a visit that is known by its label only', () => {
    const { follow_up } = planOf();
    const visits = [{ name: '1 month', days: undefined, aim: undefined, labels: ['1M'] }];
    expect(written(auditRows, { follow_up: { ...follow_up, visits, outcome: ['1 month'] } })).toContain(
      '“1 month” (by its label)',
    );
  });

  it('tells only the methods that the results bear', () => {
    expect(text).toContain('Clopper–Pearson');
    expect(text).not.toContain('geometric means');
    const ratio = rowsOf({ measure: 'made_up', n: 9, unit: '', method: 'geometric-patient-t' }, { ratio: [2, 1, 4] });
    expect(written([...auditRows, ...ratio])).toContain('Intervals of geometric means are');
    const inexact = without(auditRows, ({ method }) => method.startsWith('exact'));
    expect(() => written(inexact)).not.toThrow();
    expect(written(inexact)).not.toContain('Clopper');
  });

  it('tells only the measures that an eye has', () => {
    expect(text).toContain('The target error is');
    const untargeted = written(without(auditRows, ({ measure }) => measure === 'target_error'));
    expect(untargeted).not.toContain('The target error is');
  });

  it('names the formula where it is not what was recorded with the operation', () => {
    const { predictions } = planOf();
    expect(text).toContain('Predictions are those recorded with the operation.');
    const named = written(auditRows, { predictions: { ...predictions, primary_formula: 'Formula 7' } });
    expect(named).toContain('Predictions are those of Formula 7.');
  });

  it('says what a blank complication means: missing, unless audit.yaml declares it', () => {
    expect(text).toContain('a blank entry is missing, not none.');
    const { sources } = declaredPlan([{ file: 'a.csv', columns: {}, blank_means: { complication: 'none' } }]);
    const declared = written(auditRows, { sources });
    expect(declared).toContain('a blank entry counts as none, as audit.yaml declares for the export.');
    expect(declared).not.toContain('missing, not none');
  });

  it('numbers the works cited as they are met, each once, none unused', () => {
    const cited = [...text.matchAll(/\\\[([\d, ]+)\\\]/g)].flatMap((found) => (found[1] ?? '').split(', ').map(Number));
    const listed = [...text.matchAll(/^(\d+)\. /gm)].map((found) => Number(found[1]));
    expect([...new Set(cited)]).toEqual(listed);
    expect(listed).toEqual(listed.map((_, i) => i + 1));
  });

  it('marks works that were cited from memory', () => {
    const wilson = text.split('\n').find((line) => line.includes('Wilson EB'));
    expect(wilson).toContain('1927;22:209–212 (from memory: check before printing).');
  });

  it('says what the report is not, and whose duty de-identification is', () => {
    expect(text).toContain('no medical device');
    expect(text).toContain('De-identification of the data is the duty of those who supply them');
  });

  it('has words for every method, and fails on one without', () => {
    expect(Object.keys(en.tables.methods.byMethod)).toEqual([
      ...Object.keys(estimateMethods),
      'linear-model-patient-t',
    ]);
    expect(Object.keys(comparisonMethods)).toContain('linear-model-patient-t');
    const strange = rowsOf({ measure: 'made_up', n: 9, method: 'made-up' }, { mean: [0, 0, 0] });
    expect(() => written([...auditRows, ...strange])).toThrow('methods: method "made-up" has no words');
  });
});

describe('methods of a comparison', () => {
  const { statistics } = planOf();
  const compared = (sections: Partial<Plan['statistics']> = {}, rows = comparedRows) =>
    written(rows, { statistics: { ...statistics, ...sections } });

  it('tell cohorts, design and what stands before any difference', () => {
    const told = compared();
    expect(told).toContain('Compared with manual, the reference: laser & co; differences are the compared cohort less');
    expect(told).toContain('Mixed design: 120 patients with eyes in manual only, 121 in laser & co only, 19 in both.');
    expect(told).toContain('Cohorts were not drawn by lot');
    expect(text).not.toContain('Cohorts were not drawn by lot');
  });

  it('tell only the methods, tests and textbook forms that were used', () => {
    const told = compared();
    expect(told).toContain('Shares are compared by their difference');
    expect(told).toContain('p values of shares are Fisher’s with mid-p');
    for (const other of ['McNemar', 'paired score interval', 'textbook forms']) expect(told).not.toContain(other);
    const welch = comparedRows.map((row) =>
      row.statistic === 'difference_mean' ? { ...row, note: 'design:independent;textbook:welch' } : row,
    );
    expect(compared({}, welch)).toContain('tests are identical with their textbook forms: of means Welch’s t.');
  });

  it('tell primaries, the level that they share, and Holm’s adjustment', () => {
    // 1 − 0.05/2 = 97.5 %
    expect(compared()).toContain(
      'Primary outcomes are Prediction error within ±0.50 D; Corrected acuity, mean; 2 intervals (outcomes × comparisons) share an error of 5 %, so that each has a level of 97.5 %',
    );
    const one = comparedRows
      .map((row) => (row.measure === 'primaries' ? { ...row, value: row.statistic === 'count' ? 1 : 0.95 } : row))
      .map((row) => (row.measure === 'cdva' ? { ...row, note: '' } : row));
    const told = compared({}, one);
    expect(told).toContain(
      'The primary outcome is Prediction error within ±0.50 D; the verdict follows its 95 % interval',
    );
    expect(told).not.toContain('Holm');
  });

  it('tell margins where there are any, and else what that means', () => {
    expect(compared()).toContain('No margin was declared');
    const told = compared({ margins: { 'cdva/mean': 0.05, 'prediction_error/share_within_0.50': 0.1 } });
    expect(told).toContain(
      'Margins, declared in audit.yaml: Prediction error within ±0.50 D 10 percentage points; Corrected acuity, mean 0.05 logMAR.',
    );
    expect(told).not.toContain('No margin was declared');
  });

  it('name covariates only where there are any', () => {
    expect(compared({ adjust_for: ['axial_length', 'dense'] })).toContain(
      'Covariates of adjusted differences: axial length, dense.',
    );
    expect(compared()).not.toContain('Covariates');
  });

  it('tell that headline numbers were repeated with fewer eyes', () => {
    expect(compared()).toContain('repeated with one eye of each patient');
    expect(text).not.toContain('repeated with one eye of each patient');
  });
});
