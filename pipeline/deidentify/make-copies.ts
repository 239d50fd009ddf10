import {
  type CodeBook,
  type CodeEntry,
  type CodeKind,
  codesOf,
  type Draw,
  extendedBook,
} from '../../src/deidentify/code-book.js';
import { type Copy, copyOf } from '../../src/deidentify/copy.js';
import { type CopyName, copyNames } from '../../src/deidentify/copy-names.js';
import { nobody, patientsOfRows, people } from '../../src/deidentify/people.js';
import { doublesWithoutZeros, recordKey } from '../../src/deidentify/record-number.js';
import type { FileRecord, RunRecord } from '../../src/deidentify/run-record.js';
import { surgeonsIn } from '../../src/deidentify/surgeons.js';
import { type DatedFile, type Timeline, timeline } from '../../src/deidentify/timeline.js';
import type { DateOrder } from '../../src/intake/date.js';
import { delimiterCharacters } from '../../src/intake/delimiter.js';
import { type PlannedFile, personsIn } from './columns.js';

/** Everything that a run is going to write. */
export interface MadeCopies {
  copies: readonly { name: string; copy: Copy; delimiter: string }[];
  book: CodeBook;
  record: RunRecord;
}

/** Everybody in the files, and when they were operated. */
interface Known {
  /** How each patient was first written. */
  written: readonly string[];
  surgeons: readonly string[];
  dated: readonly DatedFile[];
  times: Timeline;
}

function knownFrom(files: readonly PlannedFile[], dateOrders: readonly DateOrder[], draw: Draw): Known {
  const all = people();
  const dated = files.map(({ of, roles, patient }, at) => ({
    of,
    roles,
    dateOrder: dateOrders[at] as DateOrder,
    patients: patientsOfRows(of.file, patient.index, all),
  }));
  const surgeons = files.flatMap(({ of, roles }) =>
    roles.flatMap((role, index) => (role.kind === 'surgeon' ? surgeonsIn(of, index) : [])),
  );
  return { written: all.written(), surgeons, dated, times: timeline(dated, draw) };
}

/** The book with everybody in it. */
function bookWith({ written, surgeons }: Known, former: CodeBook, draw: Draw): CodeBook {
  const entry =
    (kind: CodeKind) =>
    (one: string): Omit<CodeEntry, 'code'> => ({ kind, written: one });
  return extendedBook(former, [...written.map(entry('patient')), ...surgeons.map(entry('surgeon'))], draw);
}

/** The code of somebody who is in the book. */
function codeIn(book: CodeBook): (kind: CodeKind, written: string) => string {
  const codes = codesOf(book);
  return (kind, written) => {
    const code = codes(kind, written);
    if (code === undefined) throw new RangeError(`makeCopies: a ${kind} has no code; expected all of them in the book`);
    return code;
  };
}

function copiesOf(
  files: readonly PlannedFile[],
  { written, dated, times }: Known,
  book: CodeBook,
  order: boolean,
): readonly Copy[] {
  const codeOf = codeIn(book);
  const codes = written.map((one) => codeOf('patient', one));
  const codeOfSurgeon = (name: string): string => codeOf('surgeon', name);
  const persons = personsIn(files);
  return dated.map((one, at) => {
    const rank = order ? times.ranks[at] : undefined;
    const units = files[at]?.read.units ?? [];
    return copyOf({ ...one, units, zeros: times.zeros, rank, codes, codeOfSurgeon, persons });
  });
}

function fileRecord(
  file: PlannedFile,
  { patients }: DatedFile,
  { columns }: Copy,
  name: CopyName,
  place: number,
): FileRecord {
  const { rows, ragged, passedOver, unreadable } = file.read;
  const missing = patients.reduce((sum, patient) => sum + (patient === nobody ? 1 : 0), 0);
  const { isShared } = file.patient;
  const counts = { rows, ragged, passedOver, unreadable, nobody: missing };
  return { copy: name.name, renamed: name.renamed, place, ...counts, isShared, columns };
}

/** What a run did, beside what became of each file. */
function totals(
  { written, surgeons, times }: Known,
  book: CodeBook,
  former: CodeBook,
): Omit<RunRecord, 'files' | 'order' | 'namesAsNumbers'> {
  const patientsIn = ({ entries }: CodeBook): readonly CodeEntry[] => entries.filter(({ kind }) => kind === 'patient');
  const keys = [...written, ...patientsIn(former).map((one) => one.written)].map(recordKey);
  return {
    patients: written.length,
    newPatients: patientsIn(book).length - patientsIn(former).length,
    surgeons: new Set(surgeons.map(recordKey)).size,
    operations: times.operations,
    repeatedEyes: times.zeros.repeated,
    zeroDoubles: doublesWithoutZeros(new Set(keys)),
  };
}

/** Makes the copies of all files, and the book with everybody in them. */
export function makeCopies(
  files: readonly PlannedFile[],
  dateOrders: readonly DateOrder[],
  former: CodeBook,
  { order }: { order: boolean },
  draw: Draw,
): MadeCopies {
  const known = knownFrom(files, dateOrders, draw);
  const book = bookWith(known, former, draw);
  const copies = copiesOf(files, known, book, order);
  const paths = files.map(({ path }) => path);
  const names = copyNames(paths, personsIn(files));
  const made = files.map((file, at) => {
    const [dated, copy, name] = [known.dated[at], copies[at], names[at]];
    if (!dated || !copy || !name) throw new RangeError(`makeCopies: file ${at} has no copy; expected one a file`);
    const delimiter = delimiterCharacters[file.of.file.delimiter];
    return { copy: { name: name.name, copy, delimiter }, record: fileRecord(file, dated, copy, name, at + 1) };
  });
  const record: RunRecord = {
    files: made.map((one) => one.record),
    order,
    namesAsNumbers: files.some(({ patient }) => patient.names),
    ...totals(known, book, former),
  };
  return { copies: made.map((one) => one.copy), book, record };
}
