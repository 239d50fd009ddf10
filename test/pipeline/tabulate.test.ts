import { describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { tableNames } from '../../src/plan/published.js';
import { indexResults, resultKey } from '../../src/results/index.js';
import { publishedTables } from '../../src/tables/index.js';
import { en } from '../../src/words/index.js';
import { auditRows, without } from '../tables/audit.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';

const results = indexResults(auditRows);

function made(order: readonly string[] = [], leave_out: readonly string[] = []) {
  const plan = planOf();
  return tabulate(results, { ...plan, outputs: { ...plan.outputs, order, leave_out } }, en);
}
const numbered = (tables: ReturnType<typeof made>) => tables.map(({ number, id }) => `${number} ${id}`);

describe('tabulate', () => {
  it('numbers the tables in the order of the report', () => {
    expect(numbered(made())).toEqual([
      '1 eye-flow',
      '2 baseline',
      '3 refractive-accuracy',
      '4 accuracy-by-subgroup',
      '5 residual-cylinder',
      '6 double-angle-summary',
      '7 visual-acuity',
    ]);
  });

  it('puts the comparison of cohorts last, what goes together with them before it', () => {
    const compared = tabulate(indexResults(comparedRows), planOf(), en);
    expect(numbered(compared).slice(7)).toEqual(['8 confounding', '9 comparison', '10 sensitivity']);
  });

  it('makes only tables that audit.yaml can name, in the same order', () => {
    const ids = [...publishedTables.keys()];
    expect(tableNames.filter((name) => ids.includes(name))).toEqual(ids);
  });

  it('puts the tables named first, figures named among them aside, and leaves out what is left out', () => {
    const tables = made(['visual-acuity', 'double-angle', 'baseline'], ['eye-flow', 'residual-cylinder']);
    expect(numbered(tables)).toEqual([
      '1 visual-acuity',
      '2 baseline',
      '3 refractive-accuracy',
      '4 accuracy-by-subgroup',
      '5 double-angle-summary',
    ]);
  });

  it('gives no number to a table that the data do not allow', () => {
    const bare = without(auditRows, ({ measure }) => /^(prediction|target)_error/.test(measure));
    expect(numbered(tabulate(indexResults(bare), planOf(), en))[2]).toBe('3 residual-cylinder');
  });

  it('takes every number of a cell from a results row', () => {
    const keys = new Set(comparedRows.map(resultKey));
    for (const { id, rows } of tabulate(indexResults(comparedRows), planOf(), en)) {
      for (const { label, cells } of rows) {
        for (const { text, from } of cells) {
          // A cell that is empty, or a dash, has none behind it; words such as a verdict follow from a row as well.
          const isFilled = text !== '' && text !== en.tables.notThisPlane;
          expect([id, label, text, from.length > 0]).toEqual([id, label, text, isFilled]);
          expect(from.filter((key) => !keys.has(key))).toEqual([]);
        }
      }
    }
  });

  it('follows the results: another value, another text', () => {
    const moved = auditRows.map((row) => (row.statistic === 'mean' ? { ...row, value: 9.87 } : row));
    const tables = tabulate(indexResults(moved), planOf(), en);
    const changed = tables.filter((table, i) => JSON.stringify(table) !== JSON.stringify(made()[i]));
    expect(changed.map(({ id }) => id)).toEqual([
      'baseline',
      'refractive-accuracy',
      'accuracy-by-subgroup',
      'residual-cylinder',
      'visual-acuity',
    ]);
  });
});
