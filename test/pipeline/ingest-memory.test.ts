// What is held of a file grows with the columns kept, not with its text. Measured at 100 MB by test/bench/stream.mjs.
import { describe, expect, it } from 'vitest';
import { ingest } from '../../pipeline/1-ingest.js';
import { passingWords } from '../../pipeline/ingest/identifier-gate.js';
import type { Io } from '../../pipeline/io.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import type { RawTable } from '../../src/records/raw-table.js';
import { type ColumnForm, planOf } from '../findings/plan.js';

const rows = 20_000;
const encoder = new TextEncoder();

/** An export that is made while it is read: nobody holds its text. Every row has a remark of its own. */
function lane(remark: number): { io: Io; bytes(): number } {
  let bytes = 0;
  async function* open(): AsyncGenerator<Uint8Array> {
    bytes = 0;
    yield encoder.encode('ID,Eye,Sph,Cyl,Remark\n');
    for (let row = 0; row < rows; row += 100) {
      const lines = Array.from({ length: 100 }, (_, i) => {
        const sphere = (((row + i) % 25) / 4).toFixed(2);
        return `P${(row + i) >> 1},${i % 2 ? 'L' : 'R'},${sphere},-0.50,${'x'.repeat(remark)} ${row + i}\n`;
      });
      const piece = encoder.encode(lines.join(''));
      bytes += piece.length;
      yield piece;
    }
  }
  return { io: { ...memoryIo({ 'lane.csv': '' }), open }, bytes: () => bytes };
}

/** Bytes held of a table: codes, and the characters of the words, two bytes each. */
function held({ columns }: RawTable): number {
  const ofWords = (words: readonly string[]): number => words.reduce((sum, word) => sum + 2 * word.length, 0);
  return columns.reduce((sum, { codes, words }) => sum + codes.byteLength + ofWords(words), 0);
}

async function read(remark: number, more: Readonly<Record<string, ColumnForm>> = {}) {
  const { io, bytes } = lane(remark);
  const columns = { patient: 'ID', eye: 'Eye', sphere: 'Sph', ...more };
  const { raw } = await ingest(planOf([{ file: 'lane.csv', columns }]), io, () => {});
  const table = raw[0] as RawTable;
  expect(table.rows).toBe(rows);
  return { held: held(table), bytes: bytes() };
}

describe('what is held of a file', () => {
  it('is the same for remarks of ten and of five hundred letters', async () => {
    const [short, long] = [await read(10), await read(500)];
    expect(long.bytes).toBeGreaterThan(10 * short.bytes);
    expect(long.held).toBe(short.held);
    // By hand: three columns of two bytes a cell, 10,000 codes of 5 letters at the most, a few dozen words beside them.
    expect(short.held).toBeGreaterThan(3 * 2 * rows);
    expect(short.held).toBeLessThan(3 * 2 * rows + 10_000 * 2 * 5 + 1000);
  });

  it('grows by two bytes a cell with one more column of few words', async () => {
    const [three, four] = [await read(10), await read(10, { cylinder: 'Cyl' })];
    expect(four.held - three.held).toBe(2 * rows + 2 * '-0.50'.length);
  });
});

it('a column that passes is looked at whole, however many words it has', () => {
  const watcher = passingWords();
  for (let i = 0; i < 50_000; i++) watcher.push(`remark ${i}`);
  expect(watcher.verdict()).toBe(-1);
  watcher.push('see wer.auch@example.org');
  for (let i = 0; i < 50_000; i++) watcher.push(`remark ${i}`);
  expect(watcher.verdict()).toBeGreaterThanOrEqual(0);
});
