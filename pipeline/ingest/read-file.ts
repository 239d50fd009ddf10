import { createHash } from 'node:crypto';
import type { FindingParts } from '../../src/findings/builder.js';
import { fileKinds } from '../../src/findings/detail-kinds.js';
import { foldedHeader } from '../../src/findings/header.js';
import { type Delimiter, delimiterCharacters, judgeDelimiter } from '../../src/intake/delimiter.js';
import type { EncodingJudgement } from '../../src/intake/encoding.js';
import { notATable } from '../../src/intake/not-a-table.js';
import type { Plan, Reading, SourcePlan } from '../../src/records/plan.js';
import type { RawTable, ReadAs } from '../../src/records/raw-table.js';
import type { Io } from '../io.js';
import { decoderOf } from './decode.js';
import { fitsPattern, type SourceFile } from './files.js';
import { judge } from './judge.js';
import { type TableForm, type TableRead, TableReader } from './read-table.js';
import { readRecords } from './records.js';
import { bytesOf, ReadFailure, type Survey, survey } from './survey.js';
import { identifierFindings, tableFindings } from './table-findings.js';
import { wantedOf } from './wanted.js';

/** One file as text, and everything that its bytes, header and cells raise. Findings do not name their file yet. */
export interface FileRead {
  table: RawTable;
  findings: readonly FindingParts[];
}

/** Told of bytes as they pass: every file passes twice. */
export type Passed = (bytes: number) => void;

const nothingRead: ReadAs = {
  encoding: 'utf-8',
  delimiter: 'comma',
  decimal: 'none',
  dateOrder: 'none',
  sha256: '',
  bytes: 0,
  ragged: 0,
};

/** A file that gives no rows, because of what the finding says. */
function unread({ source, path }: SourceFile, rule: string, more: Partial<FindingParts> = {}): FileRead {
  const rowNumber = (row: number): number => {
    throw new RangeError(`rowNumber: row ${row} of ${path}, which was not read`);
  };
  const none = { header: [], kept: [], columns: [], rows: 0, rowNumber, read: nothingRead };
  return {
    table: { source, file: path, label: path, ...none },
    findings: [{ rule, severity: 'stop', effect: 'nothing published', ...more }],
  };
}

/** The encoding to decode with: what audit.yaml says wins, but which kind of UTF-16 it is the bytes say. */
function encodingOf(declared: string, judged: EncodingJudgement): string {
  if (declared === 'auto') return judged.encoding;
  if (declared !== 'utf-16') return declared;
  return judged.encoding.startsWith('utf-16') ? judged.encoding : 'utf-16le';
}

/** How the bytes become cells. */
interface BytesForm {
  encoding: string;
  delimiter: Delimiter;
  separatorLine: boolean;
}

async function bytesForm({ sample, judged }: Survey, reading: Reading): Promise<BytesForm | undefined> {
  const encoding = encodingOf(reading.encoding, judged);
  const beginning = (await decoderOf(encoding)).write(sample);
  const { delimiter, separatorLine } = judgeDelimiter(beginning, reading.header_row);
  const chosen = reading.delimiter === 'auto' ? delimiter : reading.delimiter;
  return chosen && { encoding, delimiter: chosen, separatorLine };
}

async function* decoded(pieces: AsyncIterable<Uint8Array>, encoding: string): AsyncGenerator<string | Uint8Array> {
  // The parser reads UTF-8 itself, faster than any decoder before it.
  if (encoding === 'utf-8') return yield* pieces;
  const decoder = await decoderOf(encoding);
  for await (const piece of pieces) yield decoder.write(piece);
  yield decoder.end();
}

/** Reads the file a second time, into columns. */
async function readTable(
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
  const { records, openRecord } = await readRecords(decoded(hashed(), encoding), form.separator, (cells) =>
    reader.take(cells),
  );
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

/** Reads one file that is there. */
async function readPresent(file: SourceFile, plan: Plan, io: Io, passed: Passed): Promise<FileRead> {
  const source = plan.sources[file.source] as SourcePlan;
  const found = await survey(file.path, io, passed);
  if (found.bytes === found.judged.markBytes) return unread(file, 'file-empty');
  const kind = notATable(found.sample);
  if (kind) return unread(file, 'file-not-csv', { detail: fileKinds.indexOf(kind) });
  const bytes = await bytesForm(found, source.reading);
  if (!bytes) return unread(file, 'delimiter-open');

  const { read, sha256 } = await readTable(file.path, tableForm(bytes, source), bytes.encoding, io, passed);
  if (!read.header) return unread(file, 'file-empty');
  const { decimal, dateOrder, doubts } = judge(read, source.reading);
  const { encoding, delimiter } = bytes;
  const { header, columns, rows, rowNumber, ragged } = read;
  const readAs = { encoding, delimiter, decimal, dateOrder, sha256, bytes: found.bytes, ragged: ragged.length };
  const cells = { header, kept: read.layout.kept, columns, rows, rowNumber, read: readAs };
  const isReviewed = reviewedColumns(file.path, plan);
  return {
    table: { source: file.source, file: file.path, label: file.path, ...cells },
    findings: [...tableFindings(read), ...identifierFindings(read, isReviewed), ...doubts],
  };
}

function tableForm({ delimiter, separatorLine }: BytesForm, source: SourcePlan): TableForm {
  const { header_row: headerRow, units_row: unitsRow } = source.reading;
  return { separator: delimiterCharacters[delimiter], separatorLine, headerRow, unitsRow, wanted: wantedOf(source) };
}

/** Whether audit.yaml declares a column of this file safe. */
function reviewedColumns(path: string, plan: Plan): (header: string) => boolean {
  const reviewed = plan.identifiers_reviewed.filter(({ file }) => fitsPattern(path, file));
  const headers = new Set(reviewed.map(({ column }) => foldedHeader(column)));
  return (header) => headers.has(foldedHeader(header));
}

/** Reads one file, or says why it cannot be. */
export async function readFile(file: SourceFile, plan: Plan, io: Io, passed: Passed): Promise<FileRead> {
  if (!file.found) return unread(file, 'file-missing', { written: file.nearest });
  if ((await io.stat(file.path))?.kind === 'folder') return unread(file, 'file-unreadable');
  try {
    return await readPresent(file, plan, io, passed);
  } catch (error) {
    if (error instanceof ReadFailure) return unread(file, 'file-unreadable');
    throw error;
  }
}
