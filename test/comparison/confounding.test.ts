import { describe, expect, it } from 'vitest';
import { crossRows, mixOverlap, mixRow, overlapRows } from '../../src/comparison/confounding.js';
import { comparisonGroup, withPair } from '../../src/comparison/group.js';
import { daysFromCalendar } from '../../src/intake/calendar.js';
import { noDay } from '../../src/records/canonical.js';

const patient = Int32Array.of(0, 0, 1, 2, 2, 3, 4, 5);
const surgeons = { field: 'surgeon', names: ['S1', 'S2'], code: Int32Array.of(1, 1, 1, 2, 2, 2, 2, 1) };
const compares = {
  group: 'technique=B vs A',
  compared: { key: 'technique=B', eyes: Int32Array.of(3, 4, 5, 6) },
  reference: { key: 'technique=A', eyes: Int32Array.of(0, 1, 2, 7) },
};
const day = (text: string): number => {
  const [year, month, date] = text.split('-').map(Number) as [number, number, number];
  return daysFromCalendar({ year, month, day: date }) as number;
};

describe('who operated with what', () => {
  it('counts eyes and patients of every value in every cohort, none included', () => {
    const rows = crossRows(surgeons, [compares.reference, compares.compared], patient);
    const told = rows.map(({ group, value, eyes, patients }) => ({ group, value, eyes, patients }));
    expect(told).toEqual([
      { group: 'surgeon=S1;technique=A', value: 4, eyes: 4, patients: 3 },
      { group: 'surgeon=S2;technique=A', value: 0, eyes: 4, patients: 0 },
      { group: 'surgeon=S1;technique=B', value: 0, eyes: 4, patients: 0 },
      { group: 'surgeon=S2;technique=B', value: 4, eyes: 4, patients: 3 },
    ]);
  });

  // Worked by hand: the smaller share of each value, summed.
  it.each([
    [[5, 5], [5, 5], 1],
    [[5, 5], [10, 0], 0.5],
    [[4, 0], [0, 4], 0],
    [[6, 2, 2], [1, 1, 2], 0.25 + 0.2 + 0.2],
  ])('mixes %j and %j overlap by %d', (a, b, overlap) => {
    expect(mixOverlap(a, b)).toBeCloseTo(overlap, 15);
    expect(mixOverlap(b, a)).toBeCloseTo(overlap, 15);
  });

  it('has no overlap to tell where a cohort is empty', () => {
    expect(mixOverlap([0, 0], [1, 2])).toBeUndefined();
  });

  it('marks cohorts that share no surgeon', () => {
    expect(mixRow(surgeons, compares, patient)).toMatchObject({
      measure: 'confounding',
      statistic: 'overlap:surgeon',
      value: 0,
      note: 'no-overlap',
      patients: 6,
    });
  });
});

describe('overlap in time', () => {
  const year = new Float64Array(8).fill(2025);
  const time = (days: readonly string[]) => ({ day: Int32Array.from(days, day), year, patient });

  it('counts calendar months that both cohorts share, of those from first to last', () => {
    // A: January, January, March, June. B: March, April, June, June. January to June are 6 months; March and June shared.
    const before = ['2025-01-03', '2025-01-31', '2025-03-01'];
    const rows = overlapRows(
      compares,
      time([...before, '2025-03-31', '2025-04-02', '2025-06-01', '2025-06-30', '2025-06-15']),
    );
    expect(rows.map(({ statistic, value, note }) => [statistic, value, note])).toEqual([
      ['overlap_months', 2, 'uneven'],
      ['months', 6, ''],
    ]);
  });

  it('marks a before-and-after comparison', () => {
    const before = ['2024-11-03', '2024-11-30', '2024-12-01'];
    const rows = overlapRows(
      compares,
      time([...before, '2025-01-31', '2025-02-02', '2025-02-01', '2025-02-03', '2024-12-31']),
    );
    expect(rows.map(({ value, note }) => [value, note])).toEqual([
      [0, 'no-overlap'],
      [4, ''],
    ]);
  });

  it('counts years where there are no dates', () => {
    const undated = { day: new Int32Array(8).fill(noDay), year: Float64Array.of(1, 1, 2, 2, 2, 3, 3, 2), patient };
    expect(overlapRows(compares, undated).map(({ statistic, value }) => [statistic, value])).toEqual([
      ['overlap_years', 1],
      ['years', 3],
    ]);
  });
});

describe('names of groups', () => {
  it('encode what has a meaning inside a group', () => {
    expect(comparisonGroup('technique', 'laser', 'manual')).toBe('technique=laser vs manual');
    expect(comparisonGroup('lens_model', 'A vs B', '50%;1=2')).toBe('lens_model=A%20vs%20B vs 50%25%3B1%3D2');
  });

  it('keep their pairs in alphabetical order', () => {
    expect(withPair('all', 'sensitivity=one-eye')).toBe('sensitivity=one-eye');
    expect(withPair('technique=A', 'sensitivity=one-eye')).toBe('sensitivity=one-eye;technique=A');
    expect(withPair('cohort=A', 'sensitivity=one-eye')).toBe('cohort=A;sensitivity=one-eye');
  });
});
