import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { doubleAngleSummary } from '../../src/tables/double-angle-summary.js';
import { residualCylinder } from '../../src/tables/residual-cylinder.js';
import { en } from '../../src/words/index.js';
import { auditRows, groups, replaced, without } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

// The numbers are those of set E of the check values (R 4.2.2, derived): centroid 0.4269 @ 92.42, SD 0.4411 and 0.2389,
// semi-axes 1.4831, 0.7601 and 0.4472, 0.2292, T² 10.9051, p 0.04179.
describe('doubleAngleSummary', () => {
  const table = doubleAngleSummary(indexResults(auditRows), planOf(), en);

  it('shows the centroid at its steep meridian, its region and its test', () => {
    expect(cellsOf(table, 'Centroid, D @')[2]).toBe('0.43 @ 092');
    expect(cellsOf(table, '95 % region of the centroid')[2]).toBe('0.45 × 0.23');
    expect(cellsOf(table, 'Centroid against 0: T²')[2]).toBe('10.91');
    expect(cellsOf(table, 'Centroid against 0: p')[2]).toBe('0.042');
  });

  it('shows spread, the region of the next eye and the share really inside', () => {
    expect(cellsOf(table, 'SD of x')[2]).toBe('0.44');
    expect(cellsOf(table, 'Covariance of x and y')[2]).toBe('\u22120.03');
    expect(cellsOf(table, 'Region expected to hold the next eye')[2]).toBe('1.48 × 0.76');
    expect(cellsOf(table, 'Eyes really inside')[2]).toBe('349/371, 94.1');
  });

  it('names the plane in its title and blocks, and tells the method of the region', () => {
    expect(table?.title).toContain('corneal plane');
    const blocks = table?.rows.filter(({ indent }) => indent === 0).map(({ label }) => label);
    expect(blocks?.every((label) => label.includes('corneal plane'))).toBe(true);
    expect(table?.footnotes.join(' ')).toContain('Hotelling’s T² with the covariance from patient sums');
    expect(table?.footnotes.join(' ')).toContain('the vertex distance recorded, in 40 eyes without one at 12 mm');
  });

  it('says nothing of an assumed vertex distance where all are recorded', () => {
    const all = rowsOf({ measure: 'provenance', n: 421, unit: 'eyes' }, { vertex_assumed: 0 });
    const known = doubleAngleSummary(indexResults(replaced(auditRows, all)), planOf(), en);
    expect(known?.footnotes[0]).toContain('at the vertex distance recorded. No left eye');
  });

  it('is not made without vectors', () => {
    const bare = without(auditRows, ({ measure }) =>
      /^(corneal_cylinder_before|refractive_cylinder_after)$/.test(measure),
    );
    expect(doubleAngleSummary(indexResults(bare), planOf(), en)).toBeUndefined();
  });
});

describe('residualCylinder', () => {
  const table = residualCylinder(indexResults(auditRows), planOf(), en);

  it('keeps each plane in a column of its own, named in its head', () => {
    expect(table?.head).toEqual([
      { text: 'Statistic (95 % CI)' },
      { text: 'Corneal cylinder before surgery (keratometry, corneal plane)', n: 410 },
      { text: 'Refractive cylinder after surgery, as recorded (spectacle plane)', n: 371 },
      { text: 'Refractive cylinder after surgery (corneal plane)', n: 371 },
    ]);
    expect(cellsOf(table, '≤ 0.50 D')).toEqual(['–', '278/371, 74.9 (70.3 to 79.1)', '–']);
    expect(cellsOf(table, 'Centroid, D @')).toEqual(['–', '–', '0.43 @ 092']);
    expect(cellsOf(table, 'Mean magnitude')).toEqual([
      '1.01 (0.95 to 1.08)',
      '0.55 (0.50 to 0.60)',
      '0.60 (0.42 to 0.77)',
    ]);
  });

  it('has a block for each cohort', () => {
    const blocks = table?.rows.filter(({ indent }) => indent === 0).map(({ label }) => label);
    expect(blocks).toEqual(['manual', 'laser & co', 'All eyes']);
  });

  it('shows shares before surgery where the results have them', () => {
    const before = groups.flatMap((group) =>
      rowsOf(
        { measure: 'corneal_cylinder_magnitude_before', group, n: 410, unit: 'share', method: 'wilson-effective-n' },
        { 'share_within_0.50': [0.2, 0.16, 0.24], 'count_within_0.50': 82 },
      ),
    );
    const more = residualCylinder(indexResults([...auditRows, ...before]), planOf(), en);
    expect(cellsOf(more, '≤ 0.50 D')[0]).toBe('82/410, 20.0 (16.0 to 24.0)');
    expect(cellsOf(more, '≤ 0.25 D')[0]).toBe('–');
  });

  it('is not made without a refraction after surgery', () => {
    const bare = without(auditRows, ({ measure }) => measure === 'refractive_cylinder_after_recorded');
    expect(residualCylinder(indexResults(bare), planOf(), en)).toBeUndefined();
  });
});
