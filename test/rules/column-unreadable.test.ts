import { expect, it } from 'vitest';
import { tell } from '../../src/findings/telling.js';
import { en } from '../../src/words/index.js';
import { findingsOf } from '../findings/audited.js';
import { type ColumnForm, planOf } from '../findings/plan.js';
import { after, lane } from './clinic.js';

/** What is said of a lane file of three rows with these cells in one column. */
async function told(cells: readonly string[], columns: Readonly<Record<string, ColumnForm>>, reading = {}) {
  const rows = cells.map((cell, i) => `A${i + 1},R,${after},${cell}`);
  const { findings, raw } = await lane('X', rows, columns);
  const [finding] = findingsOf(findings, 'column-unreadable');
  const read = raw.map((table) => ({ ...table, read: { ...table.read, ...reading } }));
  const plan = planOf([{ file: 'theatre.csv' }, { file: 'lane.csv', columns }]);
  return { finding, told: tell(finding as never, { raw: read, plan, words: en.findings }) };
}

it('names the first row that is unreadable, past rows that can be read', async () => {
  const { finding } = await told(['540', 'long', 'longer', 'longest'], { cct: 'X' });
  expect(finding).toMatchObject({ severity: 'stop', row: 3, written: 'long', detail: 3 });
});

it('says what to do where its cells are dates, which are not quoted', async () => {
  const { finding, told: words } = await told(Array(3).fill('06/09/2025'), { sphere: 'X' });
  expect(finding?.written).toBeUndefined();
  expect(words.sentence).toContain('not shown here');
  expect(words.sentence).not.toContain('‘’');
  expect(words.act).toContain('format the column as text');
});

it('offers the other decimal mark where that reads the number, and none where it does not', async () => {
  const pointed = { decimal: 'point' };
  const comma = await told(Array(3).fill('"23,64x"'), { cct: 'X' }, pointed);
  expect(comma.told.lines).toEqual([]);
  const words = { ...(comma.finding as object), written: '23,64' };
  const plan = planOf([{ file: 'theatre.csv' }, { file: 'lane.csv', columns: { cct: 'X' } }]);
  const raw = [{}, { source: 1, header: [], kept: [], read: pointed }];
  const { lines, act } = tell(words as never, { raw: raw as never, plan, words: en.findings });
  expect(lines).toEqual(['reading: { decimal: comma }']);
  expect(act).toContain('another decimal mark');
});
