import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesForm, readTable, tableForm } from '../../pipeline/ingest/read-bytes.js';
import type { TableRead } from '../../pipeline/ingest/read-table.js';
import { survey } from '../../pipeline/ingest/survey.js';
import { layoutOf } from '../../pipeline/ingest/wanted.js';
import type { Io } from '../../pipeline/io.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import type { SourcePlan } from '../../src/records/plan.js';
import { planOf } from '../findings/plan.js';
import { acuityCases } from './acuities.js';
import { ambiguousCases } from './ambiguous.js';
import { header, written } from './corpus.js';
import { dateCases } from './dates.js';
import { encodingCases } from './encodings.js';
import { layoutCases } from './layouts.js';
import { numberCases } from './numbers.js';
import { refractionCases } from './refractions.js';
import { spreadsheetCases } from './spreadsheets.js';

// A plain file is split by its bytes, any other by the parser of record. Whatever the first reads, the second must read
// in the same way: cells, rows, doubts, and what is told of cells that are not kept.

const corpus = [
  ...[encodingCases, layoutCases, numberCases, dateCases, acuityCases],
  ...[refractionCases, spreadsheetCases, ambiguousCases],
].flat();

const { reading } = planOf([{ file: 'lane.csv', columns: {} }]).sources[0] as SourcePlan;

/** Keeps the eye and every other column, so that both kept and passing cells are compared. */
function layout(names: readonly string[]) {
  const wanted = (column: string, field: string | undefined) => {
    const place = { position: undefined, occurrence: undefined, type: undefined, scaleDeclared: false };
    return { column, field, ...place };
  };
  const kept = names.filter((name, at) => name !== '' && names.indexOf(name) === at && (at % 2 === 0 || at === 1));
  return layoutOf(
    names,
    kept.map((name) => wanted(name, name === names[1] ? 'eye' : undefined)),
  );
}

/** What a reading says, without its functions. */
function told(read: TableRead) {
  const { rowNumber, columns, layout: _, ...rest } = read;
  return {
    ...rest,
    rowNumbers: Array.from({ length: read.rows }, (_, row) => rowNumber(row)),
    columns: columns.map(({ words, codes }) => ({ words, codes: [...codes] })),
  };
}

/** The file read both ways; undefined where it is not plain. */
async function bothWays(bytes: string | Uint8Array, io: Io = memoryIo({ 'lane.csv': bytes })) {
  const found = await survey('lane.csv', io, () => {});
  const form = await bytesForm(found, { ...reading, header_row: 1 });
  if (form?.plainFrom === undefined) return undefined;
  const readAs = async (plainFrom: number | undefined) => {
    const { read, sha256 } = await readTable(
      'lane.csv',
      tableForm({ ...form, plainFrom }, reading, layout),
      form.encoding,
      io,
      () => {},
    );
    return { ...told(read), sha256 };
  };
  return { byBytes: await readAs(form.plainFrom), byParser: await readAs(undefined) };
}

/** The rows of a text again and again, its header among them: longer than the rows in which a header is looked for. */
function stretched(bytes: string | Uint8Array): Uint8Array {
  const own = Buffer.from(bytes);
  return Buffer.concat(Array.from({ length: 15 }, (_, i) => (i > 0 && own[0] === 0xef ? own.subarray(3) : own)));
}

describe('the corpus', () => {
  it.each(corpus.map(({ name, bytes }) => [name, bytes] as const))('%s', async (_, bytes) => {
    for (const file of [bytes, stretched(bytes)]) {
      const both = await bothWays(file);
      if (both) expect(both.byBytes).toEqual(both.byParser);
    }
  });

  it('is plain in many of its files, and in some is not', async () => {
    const isPlain = await Promise.all(corpus.map(async ({ bytes }) => (await bothWays(bytes)) !== undefined));
    expect(isPlain.filter(Boolean).length).toBeGreaterThan(30);
    expect(isPlain.filter((one) => !one).length).toBeGreaterThan(10);
  });
});

/** Files in pieces, cut anywhere. */
function inPieces(bytes: Uint8Array, cuts: readonly number[]): Io {
  const whole = memoryIo({ 'lane.csv': bytes });
  return {
    ...whole,
    async *open() {
      let from = 0;
      for (const cut of [...cuts.map((one) => one % (bytes.length + 1)).sort((a, b) => a - b), bytes.length]) {
        yield bytes.subarray(from, cut);
        from = cut;
      }
    },
  };
}

const cell = fc.constantFrom(
  '',
  ' ',
  'OD',
  'OS',
  'R',
  'ID',
  'Eye',
  'mean',
  'n = 4',
  '6/9',
  '−0.25',
  'ä°',
  '(D)',
  'Sph',
);
const line = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...written().split('\n').slice(1, 5)) },
  { weight: 1, arbitrary: fc.array(cell, { minLength: 1, maxLength: 9 }).map((cells) => cells.join(',')) },
);
const anyFile = fc.record({
  lines: fc.array(line, { maxLength: 120 }),
  ends: fc.constantFrom('\n', '\r\n'),
  endsOpen: fc.boolean(),
  mark: fc.constantFrom('', '\ufeff'),
  cuts: fc.array(fc.nat(5000), { maxLength: 6 }),
});

it('gives the cells of the parser for any plain text, cut into any pieces', async () => {
  await fc.assert(
    fc.asyncProperty(anyFile, async ({ lines, ends, endsOpen, mark, cuts }) => {
      const rows = [header.join(','), ...lines].join(ends);
      const both = await bothWays('', inPieces(Buffer.from(mark + rows + (endsOpen ? '' : ends)), cuts));
      expect(both?.byBytes).toEqual(both?.byParser);
    }),
    { numRuns: 150 },
  );
});

describe('what is not plain', () => {
  it.each([
    ['a quotation mark', 'a,b\n"1",2\n'],
    ['NUL', 'a,b\n1\0,2\n'],
    ['a CR alone', 'a,b\r1,2\n'],
    ['a CR at the very end', 'a,b\n1,2\r'],
    ['a row longer than rows are', `a,b\n${'x'.repeat(1 << 20)},2\n`],
    ['another encoding', Buffer.from('a,b\n1,\xe4\n', 'latin1')],
  ])('%s', async (_, bytes) => {
    expect(await bothWays(bytes)).toBeUndefined();
  });
});
