import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/records/plan.js';
import { indexResults } from '../../src/results/index.js';
import { estimateMethods } from '../../src/statistics/estimate.js';
import { methods } from '../../src/text/methods.js';
import { en } from '../../src/words/index.js';
import { auditRows, without } from '../tables/audit.js';
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
    expect(text).not.toContain('Ratios of shares');
    const ratio = rowsOf({ measure: 'made_up', n: 9, unit: '', method: 'log-ratio-patient-t' }, { ratio: [2, 1, 4] });
    expect(written([...auditRows, ...ratio])).toContain(
      'Ratios of shares, only where both are above zero, are made on the logarithmic scale',
    );
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
    expect(Object.keys(en.tables.methods.byMethod)).toEqual(expect.arrayContaining(Object.keys(estimateMethods)));
    const strange = rowsOf({ measure: 'made_up', n: 9, method: 'made-up' }, { mean: [0, 0, 0] });
    expect(() => written([...auditRows, ...strange])).toThrow('methods: method "made-up" has no words');
  });
});
