import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { accuracyBySubgroup } from '../../src/tables/accuracy-by-subgroup.js';
import { en } from '../../src/words/index.js';
import { auditRows, groups, replaced, without } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const table = accuracyBySubgroup(indexResults(auditRows), planOf(), en);

describe('accuracyBySubgroup', () => {
  it('has a block for each field with groups, a row for each value', () => {
    expect(table?.rows.map(({ label }) => label)).toEqual([
      'All eyes',
      'Lens model',
      'A1',
      '=SUM(1)',
      'Axial length, mm',
      '< 22',
      '22 to < 24.5',
      '24.5 to 26',
      '> 26',
      'not recorded',
    ]);
  });

  it('shows n, mean, spread, mean absolute error and share of each', () => {
    expect(cellsOf(table, 'A1')).toEqual([
      '90 (3)',
      '\u22120.06 (\u22120.10 to \u22120.01)',
      '0.44 (0.40 to 0.50)',
      '0.35 (0.32 to 0.38)',
      '67/90, 74 (70 to 79)', // 0.7444; fewer than 100 eyes: no decimal
    ]);
  });

  it('says which error it shows', () => {
    expect(table?.title).toContain('Prediction error by subgroup at 3 months');
    const few = groups.flatMap((group) => rowsOf({ measure: 'prediction_error', group, n: 300 }, { n: 300 }));
    const target = rowsOf({ measure: 'target_error', group: 'lens_model=A1', n: 90 }, { n: 90 });
    const rows = replaced(auditRows, few);
    expect(() => accuracyBySubgroup(indexResults([...rows, ...target]), planOf(), en)).toThrow(
      'no row target_error|lens_model=A1|missing',
    );
  });

  it('leaves out a value that no eye of the table has', () => {
    const none = rowsOf({ measure: 'prediction_error', group: 'axial_length=(missing)', n: 0 }, { n: 0 });
    const less = accuracyBySubgroup(indexResults(replaced(auditRows, none)), planOf(), en);
    expect(less?.rows.map(({ label }) => label)).not.toContain('not recorded');
  });

  it('is not made without subgroups', () => {
    expect(accuracyBySubgroup(indexResults(auditRows), planOf({ subgroups: [] }), en)).toBeUndefined();
    const bare = without(auditRows, ({ measure }) => /^(prediction|target)_error/.test(measure));
    expect(accuracyBySubgroup(indexResults(bare), planOf(), en)).toBeUndefined();
  });
});
