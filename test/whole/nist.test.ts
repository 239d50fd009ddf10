// NIST/ITL Statistical Reference Datasets, univariate sets, with certified means and SDs: written as a surgery list,
// one eye a patient, and brought through ingest and analyse as lens powers.
import { describe, expect, it } from 'vitest';
import { planOf } from '../findings/plan.js';
import { referencePresent } from '../shared-reference.js';
import { digits, univariate, valuesOf } from '../statistics/nist-univariate.js';
import { auditBy } from './audit.js';

const plan = planOf(
  [
    {
      file: 'list.csv',
      holds: 'surgery',
      columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date', lens_power: 'Power' },
    },
  ],
  // These are no lenses: whatever limits there are must not set them aside.
  {
    quality: {
      limits: { lens_power: { possible: [-1e9, 1e9], usual: [-1e9, 1e9], reason: 'test data' } },
      off: [],
      answers: [],
    },
  },
);

async function lensPowers(values: Float64Array) {
  const rows = Array.from(values, (value, i) => `N${i},R,2025-03-01,${value}`);
  const { results } = await auditBy(plan, { 'list.csv': ['ID,Eye,Date,Power', ...rows].join('\n') });
  return results;
}

describe.skipIf(!referencePresent)('NIST StRD univariate sets', () => {
  it.each(univariate.map((set) => [set.id, set] as const))('%s has the certified mean and SD', async (_, set) => {
    const results = await lensPowers(valuesOf(set));
    const found = (statistic: string) => results.get('lens_power', 'all', statistic).value;
    expect(found('n')).toBe(set.n);
    expect(digits(found('mean'), set.certified.mean)).toBeGreaterThanOrEqual(set.double_two_pass_LRE.mean - 1);
    expect(digits(found('sd'), set.certified.sd_n_minus_1)).toBeGreaterThanOrEqual(set.double_two_pass_LRE.sd - 1);
  });
});
