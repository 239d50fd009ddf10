// ../shared/spec/6-settled.md: thresholds and edges compare the magnitude rounded to 1e-6; an edge value of the
// histogram belongs to the bin nearer zero.
import { describe, expect, it } from 'vitest';
import { errorRows } from '../../src/analysis/continuous.js';
import { propertyRows } from '../../src/analysis/share.js';
import { binOf } from '../../src/analysis/shares.js';
import { errorBins, errorLimits } from '../../src/measures/profiles.js';
import { rowIn, sampleFrom } from './sample.js';

describe('bins of the histogram', () => {
  const edges = [-0.375, -0.125, 0.125, 0.375];

  it.each([
    [0, 2],
    [0.125, 2],
    [-0.125, 2],
    [0.1250001, 2],
    [0.126, 3],
    [-0.126, 1],
    [0.375, 3],
    [-0.375, 1],
    [0.38, 4],
    [-0.38, 0],
  ])('%d lies in bin %d', (value, bin) => {
    expect(binOf(value, edges)).toBe(bin);
  });

  it('hold every eye once, the open ones included, and are named after their edges', () => {
    const values = [-9, -2.125, -0.25, -0.125, 0, 0.125, 0.13, 2.125, 2.2];
    const rows = errorRows(sampleFrom(values, { bins: errorBins })).filter(({ statistic }) =>
      statistic.startsWith('count_from_'),
    );
    expect(rows).toHaveLength(19);
    expect(rows.filter(({ value }) => value !== 0).map(({ statistic, value }) => [statistic, value])).toEqual([
      ['count_from_-inf_to_-2.125', 1],
      ['count_from_-2.125_to_-1.875', 1],
      ['count_from_-0.375_to_-0.125', 1],
      ['count_from_-0.125_to_0.125', 3],
      ['count_from_0.125_to_0.375', 1],
      ['count_from_1.875_to_2.125', 1],
      ['count_from_2.125_to_inf', 1],
    ]);
  });
});

describe('shares within limits', () => {
  it('include the limit, at a millionth', () => {
    // 0.54 − 0.29 is 0.25000000000000006; 0.504 is outside ±0.50.
    const rows = errorRows(sampleFrom([0.54 - 0.29, -0.5, 0.504, 1, -2, 2.01], { within: errorLimits }));
    const counts = errorLimits.map((limit) => rowIn(rows, `count_within_${limit.toFixed(2)}`).value);
    expect(counts).toEqual([1, 2, 3, 4, 4, 5]);
    expect(rowIn(rows, 'share_within_0.50')).toMatchObject({ value: 2 / 6, n: 6, eyes: 6, patients: 6, unit: 'share' });
  });

  it('of centred errors look at the values without the own patient, means at the others', () => {
    const rows = errorRows(sampleFrom([0.1, -0.1, 0.3], { within: [0.25] }, { absolute: [0.3, -0.3, Number.NaN] }));
    expect(rowIn(rows, 'mean').value).toBeCloseTo(0.1, 12);
    expect(rowIn(rows, 'count_within_0.25')).toMatchObject({ value: 0, n: 2 });
    expect(rowIn(rows, 'mean_absolute')).toMatchObject({ value: 0.3, n: 2, eyes: 3 });
  });
});

describe('a property', () => {
  const eyes = [1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, Number.NaN];

  it('counts eyes that have it among those where it is recorded', () => {
    const rows = propertyRows(sampleFrom(eyes, { kind: 'share', family: 'eligible', unit: 'share' }));
    expect(rowIn(rows, 'share')).toMatchObject({ value: 1 / 12, n: 12, eyes: 13, method: 'wilson-effective-n' });
    expect([rowIn(rows, 'n').value, rowIn(rows, 'missing').value, rowIn(rows, 'count').value]).toEqual([12, 1, 1]);
  });

  // The lower Clopper–Pearson limit of 1 in n has a closed form: 1 − 0.975^(1/n).
  it('has an exact interval where it is a matter of safety', () => {
    const row = rowIn(propertyRows(sampleFrom(eyes, { kind: 'share', family: 'safety', unit: 'share' })), 'share');
    expect(row.method).toBe('exact-effective-n');
    expect(row.ci_low).toBeCloseTo(1 - 0.975 ** (1 / 12), 9);
  });
});

describe('one value a patient', () => {
  it('is that of the first eye that has it', () => {
    const rows = propertyRows(
      sampleFrom([1, 1, Number.NaN, 0], { kind: 'share', per: 'patient' }, { patients: [0, 0, 1, 1] }),
    );
    expect([rowIn(rows, 'n').value, rowIn(rows, 'missing').value, rowIn(rows, 'count').value]).toEqual([2, 0, 1]);
  });
});
