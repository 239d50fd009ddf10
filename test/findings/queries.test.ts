import { describe, expect, it } from 'vitest';
import { queryColumns, queryRows } from '../../src/findings/queries.js';
import { queryName } from '../../src/findings/query-name.js';
import type { Plan } from '../../src/records/plan.js';
import { en } from '../../src/words/index.js';
import { audited } from './audited.js';
import { planOf } from './plan.js';

const plan: Plan = planOf(
  [
    { file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' } },
    {
      file: 'lane.csv',
      columns: { patient: 'ID', eye: 'Eye', exam_date: 'Date', sphere: 'S', cylinder: 'C', axis: 'A', cdva: 'V' },
    },
  ],
  {},
);

const theatre = ['ID,Eye,Date', 'B2,L,2025-03-01', 'B2,R,2025-03-01', 'A10,R,2025-03-01', 'A9,L,2025-03-01'];
const lane = [
  'ID,Eye,Date,S,C,A,V',
  'B2,L,2025-05-10,75,0,0,6/6', //    row 2, day 70
  'B2,L,2025-02-10,1,-1,,6/6', //     row 3, before
  'B2,R,2025-04-10,1,-1,,6/6', //     row 4, day 40
  'A9,L,2025-04-10,1,0,0,20/2', //    row 5
  'A10,R,2025-03-11,1,-4,90,6/6', //  row 6, day 10: in no visit
  'ZZ,L,2025-04-10,1,0,0,6/6', //     row 7, never operated
  'A9,L,31.02.2025,1,0,0,6/6', //     row 8, no such date
  ',L,2025-04-10,1,0,0,6/6', //       row 9, no patient
];

async function rows(laneRows: readonly string[] = lane) {
  const files = { 'theatre.csv': theatre.join('\n'), 'lane.csv': laneRows.join('\n') };
  const { findings, tables, raw } = await audited(files, plan);
  return queryRows(findings, tables, { raw, plan, words: en.findings });
}

describe('the query list', () => {
  it('is sorted by patient as UTF-16 sorts, right before left, then day; rows without a patient stand last', async () => {
    expect((await rows()).map(({ patient, eye, days, row, rule }) => [patient, eye, days, row, rule])).toEqual([
      ['A10', 'right', '10', '6', 'cylinder-range'],
      ['A9', 'left', '', '8', 'date-unreadable'],
      ['A9', 'left', '40', '5', 'acuity-range'],
      ['B2', 'right', '40', '4', 'axis-missing'],
      ['B2', 'left', '-19', '3', 'axis-missing'],
      ['B2', 'left', '70', '2', 'sphere-range'],
      ['ZZ', 'left', '', '7', 'exam-without-surgery'],
      ['', 'left', '', '9', 'patient-missing'],
    ]);
  });

  it('names visit, place, value between marks, and what to check, under the promised columns', async () => {
    const [first, , acuity, , before, sphere] = await rows();
    expect(Object.keys(first ?? {})).toEqual([...queryColumns]);
    expect(first).toMatchObject({ visit: '', file: 'lane.csv', column: 'C', value: '‘-4’', severity: 'query' });
    expect(acuity).toMatchObject({
      visit: 'outcome',
      value: '‘20/2’',
      severity: 'set aside',
      answer: '',
      corrected_value: '',
    });
    expect(before).toMatchObject({ visit: 'before', value: '' });
    expect(sphere?.expected).toBe('−30 to 30 D');
    expect(sphere?.please_check).toBe('‘75’ cannot be a sphere: check the chart; a lost decimal mark is likely');
  });

  it('never writes a date', async () => {
    const list = await rows();
    expect(list.find(({ rule }) => rule === 'date-unreadable')).toMatchObject({ value: '', column: 'Date', row: '8' });
    expect(JSON.stringify(list)).not.toMatch(/2025/);
  });

  it('names the same doubt alike when rows move and others come, and another doubt otherwise', async () => {
    const former = new Map((await rows()).map((one) => [`${one.rule} ${one.patient} ${one.days}`, one.query]));
    const [header = '', ...rest] = lane;
    const moved = await rows([header, 'A9,L,2025-06-10,1,-1,,6/6', ...rest.reverse()]);
    for (const one of moved) {
      // What is about no patient is named by its place.
      if (one.patient === '') continue;
      const known = former.get(`${one.rule} ${one.patient} ${one.days}`);
      if (known !== undefined) expect(one.query).toBe(known);
    }
    expect(moved).toHaveLength(former.size + 1);
    expect(new Set(moved.map(({ query }) => query)).size).toBe(moved.length);
  });
});

it('rows without a patient are different doubts', async () => {
  const nameless = [lane[0] ?? '', ',L,2025-04-10,1,0,0,6/6', ',L,2025-04-10,1,0,0,6/6'];
  const names = (await rows(nameless)).filter(({ rule }) => rule === 'patient-missing').map(({ query }) => query);
  expect(new Set(names).size).toBe(2);
});

describe('the name of a query', () => {
  it('is a letter and eight signs, which no spreadsheet reads as a number', () => {
    for (let i = 0; i < 2000; i++) expect(queryName(['axis-missing', `P${i}`])).toMatch(/^q[0-9a-z]{8}$/);
  });

  it('differs where any part differs, and where the parts are cut otherwise', () => {
    const names = [
      ['a', 'b'],
      ['ab', ''],
      ['', 'ab'],
      ['a', 'b', ''],
      ['a', 'c'],
    ].map(queryName);
    expect(new Set(names).size).toBe(names.length);
  });

  it('is met by two doubts in a hundred thousand no more often than 41 bits let expect', () => {
    // Expected pairs: 100,000² / 2 / 2^41 = 0.002.
    const names = new Set(
      Array.from({ length: 100_000 }, (_, i) => queryName(['sphere-range', `P${i}`, 'right', '40'])),
    );
    expect(names.size).toBe(100_000);
  });
});
