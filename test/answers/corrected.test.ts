import { describe, expect, it } from 'vitest';
import { type Correction, correctedTables } from '../../src/answers/corrected.js';
import { keptColumn } from '../../src/records/raw-table.js';
import { ingested } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';

const plan = planOf([{ file: 'lane.csv', columns: { patient: 'ID', sphere: 'S', cylinder: 'C', cdva: 'V' } }]);

async function corrected(rows: readonly string[], ...changes: readonly Partial<Correction>[]) {
  const { raw } = await ingested({ 'lane.csv': ['ID;S;C;V', ...rows].join('\n') }, plan);
  const wanted = changes.map((one) => ({ source: 0, row: 0, header: 1, field: 'sphere', value: '', ...one }));
  const [table, ...more] = correctedTables(raw, wanted);
  if (!table || more.length > 0) throw new RangeError('one file is expected');
  return { table, raw, column: (header: number) => keptColumn(table, header) };
}

describe('corrected cells', () => {
  it('are replaced, in all other rows nothing is; what stood there is kept', async () => {
    const rows = ['A1;75;-1;0,8', 'A2;75;-1;0,8', 'A3;1;-1;0,8'];
    const { table, raw, column } = await corrected(rows, { value: '0,75' });
    expect([0, 1, 2].map((row) => column(1).at(row))).toEqual(['0,75', '75', '1']);
    expect([table.formerly?.(0, 1), table.formerly?.(1, 1), table.formerly?.(0, 2)]).toEqual([
      '75',
      undefined,
      undefined,
    ]);
    expect(keptColumn(raw[0] as never, 1).at(0)).toBe('75');
    expect(column(2)).toBe(keptColumn(raw[0] as never, 2));
  });

  it('leave no word behind that stands in no row any more', async () => {
    const { column } = await corrected(['A1;75;-1;0,8', 'A2;1;-1;0,8'], { value: '1' });
    expect(column(1).words).toEqual(['', '1']);
  });

  it('take the decimal mark of the file, whichever the list was filled in with', async () => {
    const rows = ['A1;7,5;-1;0,8'];
    expect((await corrected(rows, { value: '0.75' })).column(1).at(0)).toBe('0,75');
    expect((await corrected(rows, { value: '-.5' })).column(1).at(0)).toBe('-,5');
    expect((await corrected(rows, { value: '0,75' })).column(1).at(0)).toBe('0,75');
    expect((await corrected(rows, { header: 3, field: 'cdva', value: '20/25' })).column(3).at(0)).toBe('20/25');
    // A code is no number: P1.5 stays what it is.
    expect((await corrected(rows, { header: 0, field: 'patient', value: '1.5' })).column(0).at(0)).toBe('1.5');
  });

  it('bring a decimal mark into a file that had none', async () => {
    const { table, column } = await corrected(
      ['A1;75;-1;6/6'],
      { value: '0,75' },
      { header: 2, field: 'cylinder', value: '-0.5' },
    );
    expect([column(1).at(0), column(2).at(0), table.read.decimal]).toEqual(['0.75', '-0.5', 'point']);
  });

  it('can be corrected again: the first writing is the one that is kept', async () => {
    const first = await corrected(['A1;75;-1;0,8'], { value: '7,5' });
    const [again] = correctedTables([first.table], [{ source: 0, row: 0, header: 1, field: 'sphere', value: '0,75' }]);
    expect([keptColumn(again as never, 1).at(0), again?.formerly?.(0, 1)]).toEqual(['0,75', '75']);
  });
});
