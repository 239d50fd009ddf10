// Completeness and missing outcomes, counted on paper from seven eyes.
import { expect, it } from 'vitest';
import { followUp, missingOutcomes } from '../../src/tables/follow-up-tables.js';
import { methods } from '../../src/text/methods.js';
import { en } from '../../src/words/index.js';
import { planOf, type SourceForm } from '../findings/plan.js';
import { cellsOf } from '../tables/rows.js';
import { auditBy } from '../whole/audit.js';

const theatre: SourceForm = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: {
    patient: 'ID',
    eye: 'Eye',
    surgery_date: 'Date',
    technique: 'Op',
    predicted_se: 'Pred',
    axial_length: 'AL',
  },
};
const lane: SourceForm = {
  file: 'lane.csv',
  columns: { patient: 'ID', eye: 'Eye', days: 'Day', sphere: 'Sph', cylinder: 'Cyl', axis: 'Ax' },
};

// Due: P1 to P6; P7 was operated eleven days before the export. Seen: P1 to P4, of whom P4 missed the plan by 1 D.
const audit = await auditBy(planOf([theatre, lane], { data_until: '2026-03-31' }), {
  'theatre.csv': [
    'ID,Eye,Date,Op,Pred,AL',
    ...[1, 2, 3, 4, 5, 6].map((i) => `P${i},R,2025-03-01,a,0,${22 + i / 2}`),
    'P7,R,2026-03-20,a,0,23',
  ].join('\n'),
  'lane.csv': ['ID,Eye,Day,Sph,Cyl,Ax', 'P1,R,74,0.25,0,', 'P2,R,74,0,0,', 'P3,R,74,0.5,0,', 'P4,R,74,1,0,'].join('\n'),
});
const row = (measure: string, group: string, statistic: string) => audit.results.get(measure, group, statistic);

it('counts, for each visit by itself, the eyes that were due and those that were seen', () => {
  const group = audit.rows.find(({ group }) => group.startsWith('visit='))?.group as string;
  for (const of of ['all', group]) {
    expect(row('completeness', of, 'due').value).toBe(6);
    expect(row('completeness', of, 'count').value).toBe(4);
    expect(row('completeness', of, 'not_yet_due').value).toBe(1);
  }
  // Wilson 1927 by hand: 4/6 with z = 1.959964 has (0.6667 + 0.3201 ± 1.96·0.2495)/1.6402.
  expect(row('completeness', group, 'share').ci_low).toBeCloseTo(0.3, 3);
  expect(row('completeness', group, 'share').ci_high).toBeCloseTo(0.9032, 3);
});

it('bounds a share by what the missing eyes could have been, of all eyes that were due', () => {
  expect(row('prediction_error', 'all', 'if_missing_failed:share_within_0.50').value).toBe(3 / 6);
  expect(row('prediction_error', 'all', 'if_missing_succeeded:share_within_0.50').value).toBe(5 / 6);
  expect(row('prediction_error', 'all', 'if_missing_failed:share_within_0.50').n).toBe(6);
  expect(audit.results.find('any_complication', 'all', 'if_missing_failed:share')).toBeUndefined();
});

it('describes eyes with and without an outcome; two patients are too few for a standardised difference', () => {
  expect(row('axial_length', 'follow_up=known', 'mean').value).toBeCloseTo(23.25, 12);
  expect(row('axial_length', 'follow_up=missing', 'mean').value).toBeCloseTo(24.75, 12);
  const between = row('axial_length', 'follow_up=missing vs known', 'standardised_difference');
  expect([between.value, between.note]).toEqual([undefined, 'not-estimable:few-patients']);
});

it('prints what was counted, the bounds with the number they are of', () => {
  const table = followUp(audit.results, audit.plan, en);
  expect(table?.rows.find(({ label }) => label.startsWith('Seen at'))?.cells.at(-1)?.text).toBe('4/6, 67 (30 to 90)*');
  expect(cellsOf(table, 'Eligible, not yet due').at(-1)).toBe('1');
  expect(cellsOf(table, 'All missing eyes failed').at(-1)).toBe('3/6, 50');
  expect(cellsOf(table, 'All missing eyes succeeded').at(-1)).toBe('5/6, 83');
  const compared = missingOutcomes(audit.results, audit.plan, en);
  expect(compared?.head.map(({ text, n }) => [text, n])).toEqual([
    ['Characteristic', undefined],
    ['With outcome', 4],
    ['Without outcome', 2],
    ['Standardised difference', undefined],
  ]);
});

it('says in the methods what was done about eyes without an outcome', () => {
  const text = methods(audit.results, audit.plan, en);
  for (const sentence of [
    en.tables.followUp.methodVisits,
    en.tables.followUp.methodBounds,
    en.tables.followUp.methodCompared,
  ])
    expect(text).toContain(sentence);
});
