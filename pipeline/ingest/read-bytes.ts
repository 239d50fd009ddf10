import { createHash } from 'node:crypto';
import { type Delimiter, delimiterCharacters, judgeDelimiter, usualCells } from '../../src/intake/delimiter.js';
import type { EncodingJudgement } from '../../src/intake/encoding.js';
import type { Reading } from '../../src/records/plan.js';
import type { Io } from '../io.js';
import { decoderOf } from './decode.js';
import { readPlainRows } from './plain-rows.js';
import { type TableForm, type TableRead, TableReader } from './read-table.js';
import { readRecords } from './records.js';
import { bytesOf, type Survey } from './survey.js';

/** Told of bytes as they pass: every file passes twice. */
export type Passed = (bytes: number) => void;

/** The encoding to decode with: what audit.yaml says wins, but which kind of UTF-16 it is the bytes say. */
function encodingOf(declared: string, judged: EncodingJudgement): string {
  if (declared === 'auto') return judged.encoding;
  if (declared !== 'utf-16') return declared;
  return judged.encoding.startsWith('utf-16') ? judged.encoding : 'utf-16le';
}

/** How the bytes become cells. */
export interface BytesForm {
  encoding: string;
  delimiter: Delimiter;
  separatorLine: boolean;
  /** Whether cells may hold NUL. */
  holdsNul: boolean;
  /** Cells that most of the first rows have; 0 where there are none. */
  usualCells: number;
  /** Bytes at the beginning that say UTF-8, where rows and cells may be told by bytes; undefined where they may not. */
  plainFrom: number | undefined;
}

/** How the bytes of a file become cells; undefined where no delimiter can be told. */
export async function bytesForm(found: Survey, reading: Reading): Promise<BytesForm | undefined> {
  const encoding = encodingOf(reading.encoding, found.judged);
  const beginning = (await decoderOf(encoding)).write(found.sample);
  const { delimiter, separatorLine } = judgeDelimiter(beginning, reading.header_row);
  const chosen = reading.delimiter === 'auto' ? delimiter : reading.delimiter;
  const holdsNul = found.holdsNul && !encoding.startsWith('utf-16');
  if (!chosen) return undefined;
  const usual = usualCells(beginning, chosen, reading.header_row + (separatorLine ? 1 : 0));
  const plainFrom = found.isPlain && encoding === 'utf-8' ? found.judged.markBytes : undefined;
  return { encoding, delimiter: chosen, separatorLine, holdsNul, usualCells: usual, plainFrom };
}

async function* decoded(pieces: AsyncIterable<Uint8Array>, encoding: string): AsyncGenerator<string | Uint8Array> {
  // The parser reads UTF-8 itself, faster than any decoder before it.
  if (encoding === 'utf-8') return yield* pieces;
  const decoder = await decoderOf(encoding);
  for await (const piece of pieces) yield decoder.write(piece);
  yield decoder.end();
}

/** Reads a file from end to end, into columns. */
export async function readTable(
  path: string,
  form: TableForm,
  encoding: string,
  io: Io,
  passed: Passed,
): Promise<{ read: TableRead; sha256: string }> {
  const hash = createHash('sha256');
  async function* hashed(): AsyncGenerator<Uint8Array> {
    for await (const piece of bytesOf(path, io, passed)) {
      hash.update(piece);
      yield piece;
    }
  }
  const reader = new TableReader(form);
  const { records, openRecord } =
    form.plainFrom === undefined
      ? await readRecords(decoded(hashed(), encoding), form.separator, (cells) => reader.take(cells))
      : { records: await readPlainRows(hashed(), form.separator, form.plainFrom, reader), openRecord: 0 };
  const read = reader.finish(openRecord);
  if (openRecord === 0) assertComplete(read, records - (form.separatorLine ? 1 : 0), path);
  return { read, sha256: hash.digest('hex') };
}

/** The promise of the stage: every row of the file is in the table, ragged, or passed over. */
function assertComplete(read: TableRead, records: number, path: string): void {
  const accounted = read.rows + read.ragged.length + read.passedOver;
  if (accounted !== records)
    throw new RangeError(`ingest: ${accounted} rows of ${path} accounted for; expected ${records}`);
}

/** How the cells of a file become a table. @param layoutOf  which columns of a header are kept */
export function tableForm(
  { delimiter, separatorLine, holdsNul, usualCells: usual, plainFrom }: BytesForm,
  { header_row: headerRow, units_row: unitsRow }: Reading,
  layoutOf: TableForm['layoutOf'],
): TableForm {
  const separator = delimiterCharacters[delimiter];
  return { separator, separatorLine, holdsNul, usualCells: usual, plainFrom, headerRow, unitsRow, layoutOf };
}
