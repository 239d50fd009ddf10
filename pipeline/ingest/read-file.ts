import type { FindingParts } from '../../src/findings/builder.js';
import { fileKinds } from '../../src/findings/detail-kinds.js';
import { foldedHeader } from '../../src/findings/header.js';
import { notATable } from '../../src/intake/not-a-table.js';
import type { Plan, SourcePlan } from '../../src/records/plan.js';
import type { RawTable, ReadAs } from '../../src/records/raw-table.js';
import type { Io } from '../io.js';
import { columnDoubts } from './column-doubts.js';
import { fitsPattern, type SourceFile } from './files.js';
import { judge } from './judge.js';
import { bytesForm, type Passed, readTable, tableForm } from './read-bytes.js';
import { ReadFailure, survey } from './survey.js';
import { identifierFindings, tableFindings } from './table-findings.js';
import { layoutOf, wantedOf } from './wanted.js';

/** One file as text, and everything that its bytes, header and cells raise. Findings do not name their file yet. */
export interface FileRead {
  table: RawTable;
  findings: readonly FindingParts[];
}

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

/** Reads one file that is there. */
async function readPresent(file: SourceFile, plan: Plan, io: Io, passed: Passed): Promise<FileRead> {
  const source = plan.sources[file.source] as SourcePlan;
  const found = await survey(file.path, io, passed);
  if (found.bytes === found.judged.markBytes) return unread(file, 'file-empty');
  const kind = notATable(found.sample);
  if (kind) return unread(file, 'file-not-csv', { detail: fileKinds.indexOf(kind) });
  const bytes = await bytesForm(found, source.reading);
  if (!bytes) return unread(file, 'delimiter-open');

  const wanted = wantedOf(source);
  const form = tableForm(bytes, source.reading, (header) => layoutOf(header, wanted));
  const { read, sha256 } = await readTable(file.path, form, bytes.encoding, io, passed);
  if (!read.header) return unread(file, 'file-empty');
  const { decimal, dateOrder, doubts } = judge(read, source.reading);
  const isOff = plan.quality.off.some(({ rule }) => rule === 'unit-differs');
  const ofColumns = columnDoubts(read, source.reading, decimal).filter(
    ({ rule }) => !(isOff && rule === 'unit-differs'),
  );
  const { encoding, delimiter } = bytes;
  const { header, columns, rows, rowNumber, ragged } = read;
  const readAs = { encoding, delimiter, decimal, dateOrder, sha256, bytes: found.bytes, ragged: ragged.length };
  const cells = { header, kept: read.layout.kept, columns, rows, rowNumber, read: readAs };
  const isReviewed = reviewedColumns(file.path, plan);
  return {
    table: { source: file.source, file: file.path, label: file.path, ...cells },
    findings: [...tableFindings(read), ...identifierFindings(read, isReviewed), ...doubts, ...ofColumns],
  };
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
