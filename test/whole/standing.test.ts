import { describe, expect, it } from 'vitest';
import { analyse } from '../../pipeline/5-analyse.js';
import { indexResults } from '../../src/results/index.js';
import { warnings } from '../../src/text/warnings.js';
import { en } from '../../src/words/index.js';
import { type Audit, auditOf } from './audit.js';
import { cellsOf, footnotesOf } from './made-up-safety.js';

const eyes = 12;
const patient = (i: number): string => `V${String(i + 1).padStart(2, '0')}`;

/** Spherical equivalents at one and at three months; the last two never came the second time. */
const first = [0, 0, 0, 0, -0.25, -0.25, 0.25, 0.5, -0.5, 0, 0.25, -1];
const second = [0, 0.5, -0.51, 0.75, -0.25, 0, 0.25, 0.5, -0.5, -0.25, undefined, undefined];
const acuities = [
  '20/20',
  '20/20',
  '20/25',
  '20/20',
  '20/32',
  '20/40',
  '20/50',
  '20/20',
  '20/20',
  '20/20',
  '20/63',
  '20/20',
];

const yaml = `format: 1
title: Visits
sources:
  - file: surgery.csv
    holds: surgery
    columns: { patient: id, eye: eye, surgery_date: date, target_se: aim, predicted_se: predicted }
  - file: exams.csv
    holds: exam
    columns: { patient: id, eye: eye, exam_date: date, sphere: sph, cylinder: { column: cyl, notation: plus }, axis: ax, cdva: va }
follow_up:
  visits:
    - { name: one month, days: [21, 45] }
    - { name: three months, days: [46, 135] }
  outcome: [three months, one month]
data_until: 2025-12-31
`;
const surgery = ['id,eye,date,aim,predicted', ...first.map((_, i) => `${patient(i)},R,2025-01-10,0,0`)];
const exam = (i: number, date: string, value: number | undefined): readonly string[] =>
  value === undefined ? [] : [`${patient(i)},R,${date},${value.toFixed(2)},0,,${acuities[i]}`];
const exams = [
  'id,eye,date,sph,cyl,ax,va',
  ...first.flatMap((value, i) => exam(i, '2025-02-09', value)),
  ...second.flatMap((value, i) => exam(i, '2025-04-10', value)),
];
const audit = await auditOf(yaml, { 'surgery.csv': surgery.join('\n'), 'exams.csv': exams.join('\n') });
const { results } = audit;
const value = (measure: string, group: string, statistic: string) => results.get(measure, group, statistic).value;

describe('stability', () => {
  it('tells all eyes that came, and the same eyes at every visit', () => {
    const at = (measure: string, visit: string) => value(measure, `visit=${visit}`, 'n');
    expect([at('spherical_equivalent:visit', 'one month'), at('spherical_equivalent:visit', 'three months')]).toEqual([
      eyes,
      eyes - 2,
    ]);
    expect(at('spherical_equivalent:same_eyes', 'one month')).toBe(eyes - 2);
    // Mean of the ten at one month −0.25/10, of all twelve −1/12.
    expect(value('spherical_equivalent:same_eyes', 'visit=one month', 'mean')).toBeCloseTo(-0.025, 12);
    expect(value('spherical_equivalent:visit', 'visit=one month', 'mean')).toBeCloseTo(-1 / 12, 12);
  });

  // Changes: 0, 0.50, −0.51, 0.75, 0, 0.25, 0, 0, 0, −0.25: two of ten move by more than half a dioptre, 0.50 does not.
  it('counts eyes that changed by more than half a dioptre', () => {
    const change = (statistic: string) => value('spherical_equivalent:change', 'visit=three months', statistic);
    expect([change('n'), change('count_beyond_0.50'), change('share_beyond_0.50')]).toEqual([10, 2, 0.2]);
    expect(change('mean')).toBeCloseTo(0.74 / 10, 12);
    const cells = cellsOf(audit, 'stability');
    expect(cells.get('Changed by more than 0.50 D, n/N, %')?.[0]).toMatch(/^2\/10, 20 \(/);
    expect(footnotesOf(audit, 'stability')).toContain('A change of exactly 0.50 D does not count');
  });
});

// Outcome: three months for ten, one month for the last two. Errors against prediction 0: within 0.50 are all but
// −0.51, 0.75 and −1.00. Eyes with 20/50 and 20/63 lie below the acuity floor of 20/40.
describe('benchmarks', () => {
  it('count this audit by the definition of each figure', () => {
    const own = (id: string) => [
      value(`benchmark:${id}`, 'all', 'count_within_0.50'),
      results.get(`benchmark:${id}`, 'all', 'share_within_0.50').n,
    ];
    // Without the floor 9 of 12; with it the eyes of 20/50 (0.50 D) and 20/63 (0.25 D) are gone, both within.
    expect(own('sweden-2008-0.50')).toEqual([9, 12]);
    expect(own('gale-2009-0.50')).toEqual([7, 10]);
    // Days 7 to 60: the two eyes seen at one month alone.
    expect(own('lundstrom-2018-0.50')).toEqual([1, 2]);
  });

  it('have a verdict through the interval only', () => {
    const row = results.get('benchmark:gale-2009-0.50', 'all', 'share_within_0.50');
    expect((row.ci_low as number) < 0.55 && (row.ci_high as number) > 0.55).toBe(true);
    expect(row.note).toContain('verdict:not-distinguishable');
    const cells = cellsOf(audit, 'benchmarks');
    expect(cells.get('within ±0.50 D: Gale et al. 2009')?.slice(0, 2)).toEqual(['55.0', '7/10, 70 (40 to 89)']);
    expect(footnotesOf(audit, 'benchmarks')).toContain(
      '5577 of 8943 eyes'.replace('5577', '5,577').replace('8943', '8,943'),
    );
  });
});

describe('a former report', () => {
  const row = { measure: 'prediction_error', group: 'all', n: 200, patients: 200 };
  const former = [
    { ...row, statistic: 'share_within_0.50', value: 0.5, ci_low: 0.43, ci_high: 0.57 },
    { ...row, statistic: 'mean', value: 0.4, ci_low: 0.3, ci_high: 0.5 },
  ];
  const against = (rows: typeof former): Audit => {
    const found = analyse(audit.derived, audit.plan, rows);
    return { ...audit, rows: found, results: indexResults(found) };
  };

  // Newcombe's square-and-add: this year 9/12 with its own Wilson limits (0.4677 to 0.9111), the former 0.50 (0.43 to
  // 0.57): d = 0.25, lower 0.25 − √((0.75 − 0.4677)² + 0.07²), upper 0.25 + √((0.9111 − 0.75)² + 0.07²).
  it('is a second sample, whose uncertainty counts', () => {
    const found = against(former).results.get('former:prediction_error', 'all', 'difference_share_within_0.50');
    expect(found.value).toBeCloseTo(0.25, 12);
    expect(found.ci_low).toBeCloseTo(0.25 - Math.hypot(0.75 - 0.4677, 0.07), 3);
    expect(found.ci_high).toBeCloseTo(0.25 + Math.hypot(0.9111 - 0.75, 0.07), 3);
    expect(found.note).toBe('verdict:not-distinguishable');
  });

  it('stands in the table of benchmarks', () => {
    const cells = cellsOf(against(former), 'benchmarks').get('Prediction error, within ±0.50 D');
    expect(cells?.[0]).toBe('50.0 (43.0 to 57.0)');
    expect(cells?.[1]).toBe('9/12, 75 (47 to 91)');
    expect(cells?.[3]).toBe('not distinguishable from it');
    expect(cellsOf(against(former), 'benchmarks').get('Prediction error, mean, D')?.[3]).toBe('lower');
  });

  it('that says nothing is told of', () => {
    const plan = { ...audit.plan, benchmarks: { ...audit.plan.benchmarks, former_report: 'reports/last' } };
    expect(warnings(results, plan, en).map(({ id }) => id)).toContain('former-report');
    expect(warnings(against(former).results, plan, en).map(({ id }) => id)).not.toContain('former-report');
  });
});
