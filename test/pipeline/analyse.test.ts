// One row a number: the contract of results.csv (../shared/spec/7-model.md §11) on small audits.
import { describe, expect, it } from 'vitest';
import { analyse } from '../../pipeline/5-analyse.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { planOf, type SourceForm } from '../findings/plan.js';
import { type Audit, auditBy } from '../whole/audit.js';

const theatre: SourceForm = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date', technique: 'Op', surgeon: 'Who', predicted_se: 'Pred' },
};
const lane: SourceForm = {
  file: 'lane.csv',
  columns: { patient: 'ID', eye: 'Eye', days: 'Day', sphere: 'Sph', cylinder: 'Cyl', axis: 'Ax' },
};

/** Eyes of patients P1, P2 … (right ones unless they say otherwise), each with technique, surgeon and sphere after. */
function audit(
  eyes: readonly (readonly [technique: string, surgeon: string, sphere: string])[],
  more: Partial<Plan> = {},
): Promise<Audit> {
  const operated = eyes.map(([technique, surgeon], i) => `P${i},R,2025-03-01,${technique},${surgeon},0`);
  const exams = eyes.flatMap(([, , sphere], i) => (sphere === '' ? [] : [`P${i},R,74,${sphere},0,`]));
  return auditBy(planOf([theatre, lane], { data_until: '2026-03-31', ...more }), {
    'theatre.csv': ['ID,Eye,Date,Op,Who,Pred', ...operated].join('\n'),
    'lane.csv': ['ID,Eye,Day,Sph,Cyl,Ax', ...exams].join('\n'),
  });
}

const byTechnique = { cohorts: { by: 'technique', define: [], reference: 'a', compare: ['b'] } };
const groupsOf = (rows: readonly ResultRow[], measure: string) => [
  ...new Set(rows.filter((row) => row.measure === measure).map(({ group }) => group)),
];

describe('groups', () => {
  it('are all eyes, each cohort, and each subgroup of prediction errors', async () => {
    const { rows } = await audit(
      [
        ['a', 'S1', '0.25'],
        ['b', 'S2', '0.50'],
        ['a', '', '0.50'],
      ],
      { ...byTechnique, subgroups: ['surgeon', 'technique'] },
    );
    const plain = groupsOf(rows, 'prediction_error').filter(
      (group) => !group.includes(';') && !group.includes(' vs ') && !group.startsWith('sensitivity'),
    );
    expect(plain).toEqual(['all', 'technique=a', 'technique=b', 'surgeon=S1', 'surgeon=S2', 'surgeon=(missing)']);
    expect(groupsOf(rows, 'any_complication').filter((group) => group.startsWith('surgeon='))).toEqual([]);
  });

  it('carry signs that mean something inside a group percent-encoded', async () => {
    const { results } = await audit(
      [
        ['a', '50%; x=y', '0.25'],
        ['a', 'n vs m', '0.25'],
      ],
      { subgroups: ['surgeon'] },
    );
    expect(results.get('prediction_error', 'surgeon=50%25%3B x%3Dy', 'n').value).toBe(1);
    expect(results.get('prediction_error', 'surgeon=n%20vs%20m', 'n').value).toBe(1);
  });

  it('are no cohorts where the field holds one value only', async () => {
    const { rows } = await audit(
      [
        ['a', 'S1', '0.25'],
        ['a', 'S1', '0.50'],
      ],
      byTechnique,
    );
    expect(groupsOf(rows, 'prediction_error').some((group) => group.startsWith('technique='))).toBe(false);
  });
});

describe('rows', () => {
  it('add up: eyes with a value and without are the eyes of the group, cohorts are all eyes', async () => {
    const eyes = [
      ['a', 'S1', '0.25'],
      ['b', 'S2', ''],
      ['a', 'S1', '0.75'],
      ['b', 'S1', '-0.25'],
    ] as const;
    const { rows, results } = await audit(eyes, byTechnique);
    for (const row of rows.filter(({ statistic }) => statistic === 'missing')) {
      const n = results.get(row.measure, row.group, 'n');
      expect((n.value as number) + (row.value as number), `${row.measure} ${row.group}`).toBe(n.eyes);
    }
    const of = (group: string) => results.get('prediction_error', group, 'n').value as number;
    expect(of('technique=a') + of('technique=b')).toBe(of('all'));
  });

  it('hold a finite number, or none and the reason', async () => {
    for (const eyes of [
      [['a', 'S1', '']],
      [['a', 'S1', '0.25']],
      [
        ['a', 'S1', '0.25'],
        ['b', 'S1', '0.25'],
      ],
    ] as const) {
      const { rows } = await audit(eyes, byTechnique);
      for (const { measure, group, statistic, value, note } of rows) {
        const told = `${measure}|${group}|${statistic}`;
        if (value === undefined) expect(note, told).not.toBe('');
        else expect(value, told).toSatisfy(Number.isFinite);
      }
    }
  });

  it('give no interval below five patients, and mark it below ten', async () => {
    const eyes = Array.from({ length: 9 }, (_, i) => ['a', 'S1', (i / 4).toFixed(2)] as const);
    const row = async (n: number) => (await audit(eyes.slice(0, n))).results.get('prediction_error', 'all', 'mean');
    expect(await row(4)).toMatchObject({ ci_low: undefined, ci_high: undefined, note: 'not-estimable:few-patients' });
    expect(await row(5)).toMatchObject({ ci_low: expect.any(Number), note: 'few-patients' });
  });
});

describe('completeness', () => {
  it('is the share of due eligible eyes that have an outcome, and early eyes are counted apart', async () => {
    const { results } = await audit(
      [
        ['a', 'S1', '0.25'],
        ['a', 'S1', ''],
        ['a', 'S1', '0.50'],
      ],
      { data_until: '2025-06-28' },
    );
    // 2025-03-01 + 120 days is 2025-06-29: on the day before nobody is due.
    expect(results.get('completeness', 'all', 'not_yet_due').value).toBe(3);
    expect(results.get('completeness', 'all', 'share').value).toBeUndefined();
    const later = await audit(
      [
        ['a', 'S1', '0.25'],
        ['a', 'S1', ''],
        ['a', 'S1', '0.50'],
      ],
      { data_until: '2025-06-29' },
    );
    expect(later.results.get('completeness', 'all', 'share')).toMatchObject({ value: 2 / 3, n: 3 });
  });
});

describe('the promises of analyse', () => {
  it('end the run where a measure is no number', async () => {
    const { derived, plan } = await audit([
      ['a', 'S1', '0.25'],
      ['a', 'S1', '0.50'],
    ]);
    const broken = derived.eyes.assign({ axial_length: Float64Array.of(Number.POSITIVE_INFINITY, 23) } as never);
    expect(() => analyse({ ...derived, eyes: broken }, plan)).toThrow(RangeError);
  });
});
