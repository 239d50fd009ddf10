import { describe, expect, it } from 'vitest';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { qualify } from '../../pipeline/3-qualify.js';
import { answersSource, givenAnswers } from '../../src/answers/given.js';
import { type Judged, settle } from '../../src/answers/settle.js';
import { numbersOf } from '../../src/columns/table.js';
import { concatFindings } from '../../src/findings/builder.js';
import { type QueryRow, queryRows } from '../../src/findings/queries.js';
import type { CanonicalTables } from '../../src/records/canonical.js';
import type { RawTable } from '../../src/records/raw-table.js';
import { en } from '../../src/words/index.js';
import { allFindings, ingested } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

const plan = planOf([
  { file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' } },
  {
    file: 'lane.csv',
    columns: { patient: 'ID', eye: 'Eye', exam_date: 'Date', sphere: 'S', cylinder: 'C', axis: 'A' },
  },
]);
const theatre = ['ID,Eye,Date', 'A1,R,2025-03-01', 'A2,R,2025-03-01', 'A3,R,2025-03-01'].join('\n');
const lane = ['A1,R,2025-04-10,75,-1.00,90', 'A2,R,2025-04-10,-5.00,-1.00,90', 'A3,R,2025-04-10,1.00,-1.00,195'];
const header = 'ID,Eye,Date,S,C,A';

function judge(raw: readonly RawTable[], by = plan): Judged & { tables: CanonicalTables } {
  const harmonised = harmonise(raw, by);
  const { tables, findings } = qualify(harmonised.tables, raw, by);
  return { tables, findings: concatFindings([harmonised.findings, findings]) };
}

/** The files judged with answers, of which each is chosen by the row of the lane that its query is about. */
async function settled(
  rows: readonly string[],
  ...rounds: readonly ((query: QueryRow) => [string, string] | undefined)[]
) {
  const files = { 'theatre.csv': theatre, 'lane.csv': [header, ...rows].join('\n') };
  const { raw } = await ingested(files, plan);
  const lines: string[] = [];
  let last = settle(raw, [], plan, (tables) => judge(tables));
  for (const answer of rounds) {
    const context = { raw: last.raw, plan, words: en.findings, answered: last.answered };
    const queries = queryRows(last.findings, last.judged.tables, context);
    for (const query of queries) {
      const given = answer(query);
      if (given) lines.push([query.query, ...given].join(','));
    }
    const list = ['query,answer,corrected_value', ...lines].join('\n');
    const read = await ingested({ 'list.csv': list }, { ...plan, sources: [answersSource(['list.csv'])] });
    last = settle(raw, givenAnswers(read.raw), plan, (tables) => judge(tables));
  }
  const context = { raw: last.raw, plan, words: en.findings, answered: last.answered };
  const { refractions } = last.judged.tables.measurements;
  return {
    findings: allFindings(last.findings),
    asked: queryRows(last.findings, last.judged.tables, context).map(({ rule, patient }) => `${patient} ${rule}`),
    spheres: [...numbersOf(refractions, 'sphere')],
    rulesOf: (severity: string) =>
      allFindings(last.findings)
        .filter((one) => one.severity === severity)
        .map(({ rule }) => rule),
  };
}

const nothing = () => undefined;
const forPatient =
  (patient: string, answer: string, value = '') =>
  (query: QueryRow) =>
    query.patient === patient ? ([answer, value] as [string, string]) : undefined;

describe('answers', () => {
  it('change nothing where none is given', async () => {
    const { asked, spheres } = await settled(lane, nothing);
    expect(asked).toEqual(['A1 sphere-range', 'A2 sphere-range', 'A3 axis-range']);
    expect(spheres).toEqual([74, -6, 0]);
  });

  it('confirmed: the value is not asked about again, and only noted', async () => {
    const { asked, rulesOf, findings } = await settled(lane, forPatient('A2', 'confirmed'));
    expect(asked).toEqual(['A1 sphere-range', 'A3 axis-range']);
    expect(rulesOf('query')).toEqual([]);
    expect(rulesOf('note')).toEqual(['sphere-range', 'answers-read']);
    expect(findings.find(({ rule }) => rule === 'answers-read')).toMatchObject({ source: -1, detail: 1, other: 0 });
  });

  it('confirmed of what is impossible: it is not asked again, stays left out, and that is said', async () => {
    const { asked, rulesOf } = await settled(lane, forPatient('A1', 'confirmed'));
    expect(asked).toEqual(['A2 sphere-range', 'A3 axis-range']);
    expect(rulesOf('set aside')).toEqual(['sphere-range', 'axis-range']);
    expect(rulesOf('note')).toEqual(['answer-impossible', 'answers-read']);
  });

  it('corrected: the new value is used, the old one told', async () => {
    const { asked, spheres, findings } = await settled(lane, forPatient('A1', 'corrected', '0.75'));
    expect(asked).toEqual(['A2 sphere-range', 'A3 axis-range']);
    // +0.75 −1.00 × 90 in plus notation is −0.25 +1.00 × 180.
    expect(spheres).toEqual([-0.25, -6, 0]);
    expect(findings.find(({ rule }) => rule === 'answer-corrected')).toMatchObject({
      severity: 'note',
      source: 1,
      row: 2,
      column: 'S',
      field: 'sphere',
      written: '75’ → ‘0.75',
      eye: 0,
    });
  });

  it('cannot tell: it stays, and is counted', async () => {
    const { asked, findings } = await settled(lane, forPatient('A1', 'cannot tell'));
    expect(asked).toContain('A1 sphere-range');
    expect(findings.find(({ rule }) => rule === 'answers-read')).toMatchObject({ detail: 0, other: 1 });
  });

  it('may be answers to what an answer raised: a list that went round twice', async () => {
    // First corrected to −7.5, which is unusual after surgery; then to −0.75.
    const twice = [forPatient('A1', 'corrected', '-7.50'), forPatient('A1', 'corrected', '-0.75')];
    const { asked, spheres, rulesOf } = await settled(lane, ...twice);
    expect(asked).toEqual(['A2 sphere-range', 'A3 axis-range']);
    expect(spheres[0]).toBe(-1.75);
    expect(rulesOf('note').filter((rule) => rule === 'answer-corrected')).toHaveLength(2);
  });

  it('whose query is not asked any more are said', async () => {
    const { raw } = await ingested({ 'theatre.csv': theatre, 'lane.csv': [header, ...lane].join('\n') }, plan);
    const stale = [
      { query: 'qgone', answer: 'confirmed', written: 'confirmed', corrected: '', list: 0, row: 2 } as const,
    ];
    const told = allFindings(settle(raw, stale, plan, (tables) => judge(tables)).findings).filter(({ rule }) =>
      rule.startsWith('answer'),
    );
    expect(told).toMatchObject([
      { rule: 'answer-without-query', severity: 'note', source: 2, row: 2, written: 'qgone' },
    ]);
  });

  it('that are no answers, have no value, or are about a row are said, and change nothing', async () => {
    const stray = [...lane, 'B9,L,2025-04-10,1.00,0,0'];
    const answer = ({ patient }: QueryRow): [string, string] | undefined => {
      if (patient === 'A1') return ['perhaps', ''];
      if (patient === 'A3') return ['corrected', ''];
      return patient === 'B9' ? ['corrected', 'P1'] : undefined;
    };
    const { asked, rulesOf } = await settled(stray, answer);
    expect(asked.filter((one) => one !== ' answer')).toEqual(
      expect.arrayContaining(['A1 sphere-range', 'A2 sphere-range', 'A3 axis-range', 'B9 exam-without-surgery']),
    );
    const told = rulesOf('query').filter((rule) => rule.startsWith('answer'));
    expect(told.sort()).toEqual(['answer-incomplete', 'answer-not-applied', 'answer-unreadable']);
  });

  // A refraction in one cell, impossible in its sphere and no axis behind it: two queries of one cell.
  describe('to two queries of one cell', () => {
    const inOneCell = planOf([
      { file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' } },
      { file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye', exam_date: 'Date', refraction: 'R' } },
    ]);
    const rows = [
      'ID,Eye,Date,R',
      'A1,R,2025-04-10,75 -1.00 x 195',
      'A2,R,2025-04-10,1.00 DS',
      'A3,R,2025-04-10,1.00 DS',
    ];

    async function answered(of: (rule: string) => string) {
      const { raw } = await ingested({ 'theatre.csv': theatre, 'lane.csv': rows.join('\n') }, inOneCell);
      const judgeIt = (files: readonly RawTable[]) => judge(files, inOneCell);
      const open = settle(raw, [], inOneCell, judgeIt);
      const context = { raw, plan: inOneCell, words: en.findings };
      const given = queryRows(open.findings, open.judged.tables, context).map(({ query, rule }, row) => {
        return {
          query,
          answer: 'corrected',
          written: 'corrected',
          corrected: of(rule),
          list: 0,
          row: row + 2,
        } as const;
      });
      expect(given).toHaveLength(2);
      const { judged, findings } = settle(raw, given, inOneCell, judgeIt);
      const told = allFindings(findings).map(({ rule }) => rule);
      return { told, sphere: numbersOf(judged.tables.measurements.refractions, 'sphere')[0] };
    }

    it('one value counts once', async () => {
      const { told, sphere } = await answered(() => '0.75 -1.00 x 95');
      expect(told).toEqual(['answer-corrected']);
      expect(sphere).toBe(-0.25);
    });

    it('two values count for neither', async () => {
      const { told, sphere } = await answered((rule) => (rule === 'axis-range' ? '75 -1.00 x 95' : '0.75 -1.00 x 195'));
      expect(told).toEqual(['sphere-range', 'axis-range', 'answer-contradicted', 'answer-contradicted']);
      expect(sphere).toBe(74);
    });
  });
});
