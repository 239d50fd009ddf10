import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ingest } from '../../pipeline/1-ingest.js';
import type { Io } from '../../pipeline/io.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import type { Plan } from '../../src/records/plan.js';
import { keptColumn, type RawTable } from '../../src/records/raw-table.js';
import { planOf, type SourceForm } from '../findings/plan.js';

const silent = (): void => {};

async function rawOf(text: string | Uint8Array, source: Partial<SourceForm> = {}): Promise<RawTable> {
  const plan = planOf([{ file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye' }, ...source }]);
  const { raw } = await ingest(plan, memoryIo({ 'lane.csv': text }), silent);
  return raw[0] as RawTable;
}

/** All kept cells, row by row, behind the row's number in a spreadsheet. */
function cells(table: RawTable): readonly (readonly (string | number)[])[] {
  return Array.from({ length: table.rows }, (_, row) => [
    table.rowNumber(row),
    ...table.kept.map((index) => keptColumn(table, index).at(row)),
  ]);
}

/** The same files, handed over in pieces of the given sizes, over and over. */
function inPieces(io: Io, sizes: readonly number[]): Io {
  return {
    ...io,
    async *open(path) {
      let turn = 0;
      for await (const whole of io.open(path)) {
        for (let at = 0; at < whole.length; turn++) {
          const size = sizes[turn % sizes.length] as number;
          yield whole.slice(at, at + size);
          at += size;
        }
      }
    },
  };
}

describe('row numbers', () => {
  it('are those that a spreadsheet shows: header, blank, passed-over and multi-line rows count as one each', async () => {
    const table = await rawOf(
      [
        'Clinic export;;', // row 1, passed over
        '', //                  2, passed over
        'ID;Eye;Note', //       3, header
        'A1;R;"two', //         4, with a line break inside
        'lines"',
        '', //                  5, blank
        ';;', //                6, blank
        'A2;L;x', //            7
        'A3;R', //              8, ragged
        'A4;L;x', //            9
      ].join('\r\n'),
      { reading: { header_row: 3 } },
    );
    expect(cells(table)).toEqual([
      [4, 'A1', 'R'],
      [7, 'A2', 'L'],
      [9, 'A4', 'L'],
    ]);
    expect(table.read.ragged).toBe(1);
  });

  it('do not count the separator line that a spreadsheet hides', async () => {
    const table = await rawOf('sep=;\r\nID;Eye\r\nA1;R\r\n');
    expect(cells(table)).toEqual([[2, 'A1', 'R']]);
  });

  it('count a row of units below the header, found or declared', async () => {
    expect(cells(await rawOf('ID,Eye,Sph\n,,(D)\nA1,R,1\n'))).toEqual([[3, 'A1', 'R']]);
    expect(cells(await rawOf('ID,Eye,Sph\ncode,side,power\nA1,R,1\n', { reading: { units_row: 'yes' } }))).toEqual([
      [3, 'A1', 'R'],
    ]);
    expect(cells(await rawOf('ID,Eye,Sph\n,,mm\nA1,R,1\n', { reading: { units_row: 'no' } }))[0]).toEqual([2, '', '']);
  });

  it('refuse a row that is not there', async () => {
    const table = await rawOf('ID,Eye\nA1,R\n');
    expect(() => table.rowNumber(1)).toThrow(RangeError);
  });
});

describe('columns', () => {
  it('are kept where audit.yaml maps them, and found whatever the blanks and capitals of the header', async () => {
    const table = await rawOf('No, id ,EYE,Remark,Type\n1,A1,R,free text,REF\n', {
      only: [{ where: 'type', at: undefined, operator: 'is', value: 'REF', and: [] }],
    });
    expect(table.kept).toEqual([1, 2, 4]);
    expect(table.header).toEqual(['No', ' id ', 'EYE', 'Remark', 'Type']);
    expect(cells(table)).toEqual([[2, 'A1', 'R', 'REF']]);
  });

  it('of one header are told apart by occurrence, or by position', async () => {
    const columns = { patient: 'ID', eye: 'Eye', k1_axis: { column: 'Ax', occurrence: 2 }, k2_axis: { position: 3 } };
    const table = await rawOf('ID,Eye,Ax,Ax\nA1,R,10,100\n', { columns });
    expect(table.kept).toEqual([0, 1, 2, 3]);
    expect(keptColumn(table, 3).at(0)).toBe('100');
  });

  it('are those of all blocks and covariates', async () => {
    const table = await rawOf('ID,Eye,AL,Dense\nA1,R,23.5,yes\n', {
      blocks: [
        { holds: 'eye', columns: { patient: 'ID', eye: 'Eye', axial_length: 'AL' } },
        { holds: 'surgery', columns: { patient: 'ID', eye: 'Eye' }, covariates: { dense: 'Dense' } },
      ],
    });
    expect(table.kept).toEqual([0, 1, 2, 3]);
  });

  it('hold cells as they were written, blanks and quotation marks and all', async () => {
    const table = await rawOf('ID,Eye\n" A1 ",5"2\n"say ""x""",\u00a0R\n');
    expect(cells(table)).toEqual([
      [2, ' A1 ', '5"2'],
      [3, 'say "x"', '\u00a0R'],
    ]);
  });

  it('end where the header ends: blank cells beyond it, or missing below a blank header, are no fault', async () => {
    expect(cells(await rawOf('ID,Eye\nA1,R,,\n'))).toEqual([[2, 'A1', 'R']]);
    expect(cells(await rawOf('ID,Eye,,\nA1,R\n'))).toEqual([[2, 'A1', 'R']]);
  });
});

describe('bytes', () => {
  // The byte values are those of the Unicode code charts and of the code page tables that vendors publish:
  // é is E9 in windows-1252, € is 80 there and 20AC in Unicode; Ω is D9 in windows-1253; Я is DF in windows-1251.
  const bytesOf = (...parts: readonly (string | number)[]): Uint8Array =>
    Uint8Array.from(parts.flatMap((part) => (typeof part === 'number' ? [part] : [...Buffer.from(part, 'latin1')])));

  it('are read as UTF-8 with or without its mark', async () => {
    for (const mark of ['', '\ufeff']) {
      const table = await rawOf(`${mark}ID,Eye\nπ1,œil droit\n`);
      expect(cells(table)).toEqual([[2, 'π1', 'œil droit']]);
      expect(table.read.encoding).toBe('utf-8');
    }
  });

  it('are read as UTF-16 of either order, with its mark or without', async () => {
    const text = 'ID,Eye\r\nπ1,rechts\r\n';
    const little = Buffer.from(text, 'utf16le');
    const big = Buffer.from(little).swap16();
    for (const [bytes, encoding] of [
      [Buffer.concat([Buffer.of(0xff, 0xfe), little]), 'utf-16le'],
      [Buffer.concat([Buffer.of(0xfe, 0xff), big]), 'utf-16be'],
      [little, 'utf-16le'],
    ] as const) {
      const table = await rawOf(bytes);
      expect(cells(table)).toEqual([[2, 'π1', 'rechts']]);
      expect(table.read.encoding).toBe(encoding);
    }
  });

  it('are read as windows-1252 where they are no UTF-8', async () => {
    const table = await rawOf(bytesOf('ID,Eye\nA', 0x80, ',c', 0xf4, 't', 0xe9, '\n'));
    expect(cells(table)).toEqual([[2, 'A€', 'côté']]);
    expect(table.read.encoding).toBe('windows-1252');
  });

  it('are read as audit.yaml says', async () => {
    const table = await rawOf(bytesOf('ID,Eye\n', 0xd9, ',R\n'), { reading: { encoding: 'windows-1253' } });
    expect(cells(table)).toEqual([[2, 'Ω', 'R']]);
    const cyrillic = await rawOf(bytesOf('ID,Eye\n', 0xdf, ',R\n'), { reading: { encoding: 'windows-1251' } });
    expect(cells(cyrillic)).toEqual([[2, 'Я', 'R']]);
  });

  it('are no UTF-8 where the halves of a character stand apart, whatever is looked at together', async () => {
    // C3 A9 is é in UTF-8; with plain text between them they are two characters of a single-byte page.
    const text = Buffer.from(`ID,Eye\n${'A1,R\n'.repeat(4000)}`, 'latin1');
    const bytes = Uint8Array.from(text);
    bytes[4095] = 0xc3;
    bytes[8192] = 0xa9;
    expect((await rawOf(bytes)).read.encoding).toBe('windows-1252');
  });

  it('are hashed as they lie on the disk', async () => {
    // printf 'ID,Eye\nA1,R\n' | sha256sum (GNU coreutils 9.1).
    const table = await rawOf('ID,Eye\nA1,R\n');
    expect(table.read.sha256).toBe('c1ad887510b55056e7b97cfd96cae372034d01c7f404c37b3f62a087c6b20cea');
    expect(table.read.bytes).toBe(12);
  });
});

describe('any way of cutting a file into pieces', () => {
  const files: Readonly<Record<string, Uint8Array>> = {
    'utf-8 with quoted breaks': Buffer.from('\ufeffID;Eye;N\r\n"π""1";R;"a\r\nb"\r\n\r\nA2;œ;\u20ac\r\nA3;L\r\n'),
    'utf-16': Buffer.from('\ufeffID;Eye;N\r\n"π""1";R;"a\r\nb"\r\n\r\nA2;œ;\u20ac\r\nA3;L\r\n', 'utf16le'),
    'utf-16 without a mark': Buffer.from('ID;Eye;N\r\n"π""1";R;"a\r\nb"\r\n\r\nA2;œ;x\r\n', 'utf16le'),
    'windows-1252 with lone returns': Buffer.from('ID;Eye;N\r"\xe9""1";R;"a\rb"\r\rA2;\xe9;x\rA3;L\r', 'latin1'),
    'mixed line ends and a separator line': Buffer.from('sep=;\r\nID;Eye;N\r\nA1;R;x\nA2;L;"5"2"\rA3;L;x\r\n'),
  };
  const plan: Plan = planOf([{ file: '*.csv', columns: { patient: 'ID', eye: 'Eye', device: 'N' } }]);
  const summary = ({ raw, findings }: Awaited<ReturnType<typeof ingest>>): unknown => [
    raw.map((table) => [table.header, table.read, cells(table)]),
    findings.rule.names,
    [...findings.row],
  ];

  it.each(Object.entries(files))('gives the same table: %s', async (name, bytes) => {
    const io = memoryIo({ [`${name}.csv`]: bytes });
    const whole = summary(await ingest(plan, io, silent));
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 6 }), async (sizes) => {
        expect(summary(await ingest(plan, inPieces(io, sizes), silent))).toEqual(whole);
      }),
      { numRuns: 40 },
    );
  });
});

it('tells how many bytes have passed, every file twice', async () => {
  const told: number[][] = [];
  const io = memoryIo({ 'a.csv': 'ID,Eye\nA1,R\n', 'b.csv': 'ID,Eye\n' });
  const plan = planOf([{ file: ['a.csv', 'b.csv'], columns: { patient: 'ID', eye: 'Eye' } }]);
  await ingest(plan, io, (stage, done, total) => told.push([stage === 'ingest' ? 1 : 0, done, total]));
  expect(told).toEqual([
    [1, 12, 38],
    [1, 24, 38],
    [1, 31, 38],
    [1, 38, 38],
  ]);
});

describe('files', () => {
  const io = memoryIo({
    'exports/lane-2.csv': 'ID,Eye\nA2,R\n',
    'exports/lane-10.csv': 'ID,Eye\nA10,R\n',
    'exports/.lane-x.csv': 'ID,Eye\nhidden,R\n',
    'exports/deep/lane-3.csv': 'ID,Eye\nA3,R\n',
    'exports/lane.txt': 'x',
  });
  const read = async (file: string | string[]): Promise<readonly string[]> => {
    const plan = planOf([{ file, columns: { patient: 'ID', eye: 'Eye' } }]);
    return (await ingest(plan, io, silent)).raw.map((table) => table.file);
  };

  it('of a pattern come in name order, hidden ones left out', async () => {
    expect(await read('exports/lane-*.csv')).toEqual(['exports/lane-10.csv', 'exports/lane-2.csv']);
    expect(await read('*/*/lane*')).toEqual(['exports/deep/lane-3.csv']);
  });

  it('of a list come as listed, each once', async () => {
    expect(await read(['exports/lane-2.csv', 'exports/lane-*.csv'])).toEqual([
      'exports/lane-2.csv',
      'exports/lane-10.csv',
    ]);
  });
});
