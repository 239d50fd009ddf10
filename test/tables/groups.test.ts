import { describe, expect, it } from 'vitest';
import { groupPair, indexResults } from '../../src/results/index.js';
import { cohortColumns } from '../../src/tables/cohorts.js';
import { fieldLabel, groupPairs, valueLabel } from '../../src/tables/groups.js';
import { en } from '../../src/words/index.js';
import { auditRows, without } from './audit.js';
import { planOf } from './plan.js';

describe('groupPairs', () => {
  it('reads back what groupPair wrote, signs with a meaning included', () => {
    const group = `${groupPair('surgeon', 'S1; 100 % = all vs none')};${groupPair('technique', 'manual')}`;
    expect(groupPairs(group)).toEqual([
      ['surgeon', 'S1; 100 % = all vs none'],
      ['technique', 'manual'],
    ]);
    expect(groupPairs('all')).toEqual([]);
  });

  it('refuses what is no group', () => {
    expect(() => groupPairs('manual')).toThrow('groupPairs: "manual"; expected field=value pairs, or all');
  });
});

describe('valueLabel', () => {
  it('puts bands in words, edges where they belong', () => {
    const labels = ['(-,22)', '[22,24.5)', '[24.5,26]', '(26,-)'].map((band) => valueLabel(band, en));
    expect(labels).toEqual(['< 22', '22 to < 24.5', '24.5 to 26', '> 26']);
  });

  it('says where a value is not recorded, and leaves codes as they are', () => {
    expect(valueLabel('(missing)', en)).toBe('not recorded');
    expect(valueLabel('A1 (toric)', en)).toBe('A1 (toric)');
  });

  it('keeps the name that audit.yaml gives a covariate', () => {
    expect(fieldLabel('dense', en)).toBe('dense');
    expect(fieldLabel('axial_length', en)).toBe('Axial length, mm');
  });
});

describe('cohortColumns', () => {
  const labels = (reference: string | undefined) => {
    const plan = planOf({ cohorts: { by: 'technique', define: [], reference, compare: [] } });
    return cohortColumns(indexResults(auditRows), plan, en).map(({ label }) => label);
  };

  it('puts the declared reference first and all eyes last', () => {
    expect(labels('manual')).toEqual(['manual', 'laser & co', 'All eyes']);
    expect(labels(undefined)).toEqual(['laser & co', 'manual', 'All eyes']);
  });

  it('has one column where the audit has no cohorts', () => {
    const one = indexResults(without(auditRows, ({ group }) => group !== 'all'));
    expect(cohortColumns(one, planOf(), en)).toEqual([{ group: 'all', label: 'All eyes' }]);
  });
});
