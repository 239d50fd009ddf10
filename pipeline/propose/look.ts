import type { WordColumn } from '../../src/columns/word-column.js';
import type { FindingParts } from '../../src/findings/builder.js';
import { fileKinds } from '../../src/findings/detail-kinds.js';
import { splitDate } from '../../src/intake/date.js';
import { fileNameIdentifier } from '../../src/intake/identifiers.js';
import { missingWords } from '../../src/intake/missing.js';
import { parseNumber } from '../../src/intake/number.js';
import { parseRefraction } from '../../src/intake/refraction-cell.js';
import type { FieldType } from '../../src/plan/fields.js';
import { standardReading } from '../../src/plan/standard-reading.js';
import type { ExportedFile } from '../../src/propose/exported.js';
import { saysMissing } from '../../src/propose/missing-words.js';
import type { SourceFile } from '../ingest/files.js';
import { judge } from '../ingest/judge.js';
import type { Passed } from '../ingest/read-bytes.js';
import type { TableRead } from '../ingest/read-table.js';
import { ReadFailure } from '../ingest/survey.js';
import { identifierFindings, tableFindings } from '../ingest/table-findings.js';
import type { Layout, Wanted } from '../ingest/wanted.js';
import type { Io } from '../io.js';
import { openExport } from './open-export.js';

/** A file with all its columns, or the findings that keep it from being looked at. */
export type Looked =
  | { kind: 'file'; file: ExportedFile; read: TableRead }
  | { kind: 'unfit'; file: string; label: string; findings: readonly FindingParts[] };

/** One use of a column, of which nothing but the way its cells are read matters. */
export function usedAs(field: string | undefined, type: FieldType | undefined): Wanted {
  return { column: undefined, position: undefined, occurrence: undefined, field, type, scaleDeclared: true };
}

const everyColumn = (header: readonly string[]): Layout => ({
  kept: header.map((_, index) => index),
  uses: header.map(() => []),
  unsettled: [],
});

/** Whether a cell is a number, or a refraction, with the one or the other decimal mark. */
function isNumeric(word: string): boolean {
  return (['point', 'comma'] as const).some(
    (decimal) => parseNumber(word, { decimal }) !== undefined || parseRefraction(word, decimal) !== undefined,
  );
}

/** How most words of a column are read, before its meaning is known. */
function roughType({ words }: WordColumn, isMissing: (cell: string) => boolean): FieldType | undefined {
  const given = words.filter((word) => !isMissing(word));
  const most = (test: (word: string) => boolean): boolean => 2 * given.filter(test).length > given.length;
  if (most((word) => splitDate(word) !== undefined)) return 'date';
  return most(isNumeric) ? 'number' : undefined;
}

/** Words between measurements that say "no value", beside the built-in ones. */
function declaredMissing(columns: readonly WordColumn[]): readonly string[] {
  const words = columns.flatMap((column) => column.words.filter((word) => word !== '' && saysMissing(word)));
  return [...new Set(words.map((word) => word.trim()))].sort();
}

/** How numbers and dates of a file are written, judged as `run` judges them. @param uses  of each column */
export function judgedBy(read: TableRead, uses: readonly (readonly Wanted[])[], missing: readonly string[]) {
  const { decimal, dateOrder, doubts } = judge(
    { ...read, layout: { ...read.layout, uses } },
    { ...standardReading, missing },
  );
  const open = doubts.some(({ rule }) => rule === 'date-order-open');
  return { decimal, dateOrder: open ? undefined : dateOrder, doubts };
}

interface Opened extends Pick<ExportedFile, 'groups' | 'headerRow' | 'delimiter' | 'encoding'> {
  read: TableRead;
}

const stop = { severity: 'stop', effect: 'nothing published' } as const;

const rulesOf = { empty: 'file-empty', 'no-header': 'header-missing', 'no-delimiter': 'delimiter-open' } as const;

async function opened(path: string, io: Io, passed: Passed): Promise<Opened | FindingParts> {
  const found = await openExport(path, async () => everyColumn, io, passed);
  if (found.why === 'not-csv') return { ...stop, rule: 'file-not-csv', detail: fileKinds.indexOf(found.kind) };
  if (found.why !== undefined) return { ...stop, rule: rulesOf[found.why] };
  const { top, encoding, read } = found;
  if (!read.header || read.rows === 0) return { ...stop, rule: 'file-empty' };
  return { ...top, encoding, read };
}

function unfit(file: string, label: string, findings: readonly FindingParts[]): Looked {
  return { kind: 'unfit', file, label, findings };
}

function exported(path: string, label: string, { read, ...top }: Opened): ExportedFile {
  const types = read.columns.map((column) => roughType(column, missingWords()));
  const missing = declaredMissing(read.columns.filter((_, at) => types[at] !== undefined));
  const { decimal, dateOrder } = judgedBy(
    read,
    types.map((type) => [usedAs(undefined, type)]),
    missing,
  );
  const { columns, rows, rowNumber } = read;
  return {
    ...top,
    file: path,
    label,
    header: read.header ?? [],
    columns,
    rows,
    rowNumber,
    decimal,
    dateOrder,
    missing,
    isMissing: missingWords(missing),
  };
}

/**
 * Looks at a whole file, every column kept. Encoding, delimiter, decimal mark and date order are judged by the code
 * that `run` judges them by.
 *
 * @param label  the name that screens may show
 */
async function look(path: string, label: string, io: Io, passed: Passed): Promise<Looked> {
  try {
    const found = await opened(path, io, passed);
    if ('rule' in found) return unfit(path, label, [found]);
    const stops = tableFindings(found.read).filter(({ severity }) => severity === 'stop');
    return stops.length > 0
      ? unfit(path, label, stops)
      : { kind: 'file', file: exported(path, label, found), read: found.read };
  } catch (error) {
    if (error instanceof ReadFailure) return unfit(path, label, [{ ...stop, rule: 'file-unreadable' }]);
    throw error;
  }
}

/** Looks at files one after the other; a file that is not there is told like one that cannot be read. */
export async function lookAt(files: readonly SourceFile[], io: Io, passed: Passed): Promise<readonly Looked[]> {
  const looked: Looked[] = [];
  for (const [at, { path, found, nearest }] of files.entries()) {
    const label = fileNameIdentifier(path) === undefined ? path : `file ${at + 1}`;
    if (!found)
      looked.push(unfit(path, label, [{ ...stop, rule: 'file-missing', ...(nearest && { written: nearest }) }]));
    else if ((await io.stat(path))?.kind === 'folder')
      looked.push(unfit(path, label, [{ ...stop, rule: 'file-unreadable' }]));
    else looked.push(await look(path, label, io, passed));
  }
  return looked;
}

/** What the de-identification gate says of a file. @param fieldOf  our field, by header index */
export function gate(
  read: TableRead,
  fieldOf: (index: number) => string | undefined,
  isReviewed: (header: string) => boolean,
): readonly FindingParts[] {
  const uses = read.layout.kept.map((index) => [usedAs(fieldOf(index), undefined)]);
  return identifierFindings({ ...read, layout: { ...read.layout, uses } }, isReviewed);
}
