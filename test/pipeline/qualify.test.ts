import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { qualify } from '../../pipeline/3-qualify.js';
import { statesOf } from '../../src/columns/table.js';
import { type Kind, kinds } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { rules } from '../../src/rules/index.js';
import { allFindings, audited } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

const plan = (more: Partial<Plan> = {}): Plan =>
  planOf(
    [
      {
        file: 'theatre.csv',
        holds: 'surgery',
        columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date', axial_length: 'AL' },
      },
      {
        file: 'lane.csv',
        columns: {
          patient: 'ID',
          eye: 'Eye',
          exam_date: 'Date',
          sphere: 'S',
          cylinder: 'C',
          axis: 'A',
          cdva: 'V',
          k1: 'K1',
          k2: 'K2',
        },
      },
    ],
    more,
  );

const theatre = 'ID,Eye,Date,AL\nA1,R,2025-03-01,23.5\nA2,R,2025-03-01,245\nA3,L,2025-03-01,23\n';
const lane = (rows: readonly string[]): string => ['ID,Eye,Date,S,C,A,V,K1,K2', ...rows].join('\n');
const slips = [
  'A1,R,2025-04-10,75,-1,90,6/6,43,44',
  'A1,R,2025-05-10,5,-1,90,6/6,43,78',
  'A2,R,2025-04-10,1,-1,,20/2,43,44',
  'A3,L,2025-04-10,1,-1,90,6/6,43,44',
  'A3,L,2025-04-10,2,-1,90,6/6,43,44',
  'B9,L,2025-04-10,75,-1,90,6/6,43,44',
];

const names = Object.keys(kinds) as Kind[];

describe('qualify', () => {
  it('marks what is kept, asked about and set aside, and closes the books of every table', async () => {
    const { books, tables } = await audited({ 'theatre.csv': theatre, 'lane.csv': lane(slips) }, plan());
    expect(books.find(({ table }) => table === 'refractions')).toEqual({
      table: 'refractions',
      rows: 5,
      kept: 3,
      queried: 2,
      setAside: 2,
      reasons: { 'same-key-differs': 1, 'sphere-range': 1 },
    });
    expect(books.find(({ table }) => table === 'corrected')).toMatchObject({ rows: 5, setAside: 1 });
    expect(books.find(({ table }) => table === 'keratometries')).toMatchObject({ rows: 5, setAside: 1 });
    expect(books.find(({ table }) => table === 'eyes.axial_length')).toEqual({
      table: 'eyes.axial_length',
      rows: 3,
      kept: 2,
      queried: 0,
      setAside: 1,
      reasons: { 'axial-length-range': 1 },
    });
    expect([...statesOf(tables.eyes, 'axial_length.state')]).toEqual([0, 2, 0]);
  });

  it('alters nothing but states: every other column is the very same one', async () => {
    const files = { 'theatre.csv': theatre, 'lane.csv': lane(slips) };
    const { tables, raw } = await audited(files, plan());
    const before = statesOf(tables.measurements.refractions).slice();
    const again = qualify(tables, raw, plan());
    for (const kind of names) {
      const [was, is] = [tables.measurements[kind], again.tables.measurements[kind]];
      expect(is.columnNames()).toEqual(was.columnNames());
      for (const name of was.columnNames()) if (name !== 'state') expect(is.column(name)).toBe(was.column(name));
    }
    for (const name of tables.eyes.columnNames()) {
      if (!name.endsWith('.state')) expect(again.tables.eyes.column(name)).toBe(tables.eyes.column(name));
    }
    expect(again.tables.events).toBe(tables.events);
    expect(statesOf(again.tables.measurements.refractions)).toEqual(before);
    expect(statesOf(tables.measurements.refractions)).toEqual(before);
  });

  it('leaves a rule out that the audit switches off', async () => {
    const files = { 'theatre.csv': theatre, 'lane.csv': lane(slips) };
    const told = async (by: Plan) => allFindings((await audited(files, by)).findings).map(({ rule }) => rule);
    expect(await told(plan())).toContain('sphere-range');
    const off = [{ rule: 'sphere-range', reason: 'a practice for high myopia' }];
    const without = await told(plan({ quality: { limits: {}, off, answers: [] } }));
    expect(without).not.toContain('sphere-range');
    expect(without).toContain('keratometry-range');
  });

  it('closes its books whatever the rows are', async () => {
    const row = fc
      .tuple(
        fc.constantFrom('A1,R', 'A2,R', 'A3,L', 'B9,R', 'A1,', ',L'),
        fc.constantFrom('2025-02-01', '2025-04-10', '2025-05-10', ''),
        fc.constantFrom('75', '5', '-1', '', 'x'),
        fc.constantFrom('-14', '-4', '-1', '0', ''),
        fc.constantFrom('195', '90', '0', '', 'x'),
        fc.constantFrom('20/2', '6/6', 'CF', ''),
        fc.constantFrom('43', '78', ''),
        fc.constantFrom('44', '7.8', ''),
      )
      .map((cells) => cells.join(','));
    await fc.assert(
      fc.asyncProperty(fc.array(row, { maxLength: 12 }), async (rows) => {
        const { tables, books } = await audited({ 'theatre.csv': theatre, 'lane.csv': lane(rows) }, plan());
        for (const kind of names) {
          const { rows: all, kept, setAside, reasons } = books.find(({ table }) => table === kind) as (typeof books)[0];
          const states = [...statesOf(tables.measurements[kind])];
          expect([kept + setAside, setAside]).toEqual([all, states.filter((one) => one === 2).length]);
          expect(Object.values(reasons).reduce((a, b) => a + b, 0)).toBe(setAside);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('knows every rule by one name', () => {
    const ids = rules.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
