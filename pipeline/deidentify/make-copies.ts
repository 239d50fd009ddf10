import { type CodeBook, codesOf, type Draw, extendedBook } from '../../src/deidentify/code-book.js';
import { type Copy, copyOf } from '../../src/deidentify/copy.js';
import { copyNames } from '../../src/deidentify/copy-names.js';
import { nobody, patientsOfRows, people } from '../../src/deidentify/people.js';
import { doublesWithoutZeros, recordKey } from '../../src/deidentify/record-number.js';
import type { FileRecord, RunRecord } from '../../src/deidentify/run-record.js';
import { surgeonsIn } from '../../src/deidentify/surgeons.js';
import { type Timeline, timeline } from '../../src/deidentify/timeline.js';
import type { DateOrder } from '../../src/intake/date.js';
import { delimiterCharacters } from '../../src/intake/delimiter.js';
import { type PlannedFile, personsIn } from './columns.js';

/** Everything that a run is going to write. */
export interface MadeCopies {
  copies: readonly { name: string; copy: Copy; delimiter: string }[];
  book: CodeBook;
  record: RunRecord;
}

/** The code of somebody who is in the book. */
function codeIn(book: CodeBook): (kind: 'patient' | 'surgeon', written: string) => string {
  const codes = codesOf(book);
  return (kind, written) => {
    const code = codes(kind, written);
    if (code === undefined) throw new RangeError(`makeCopies: a ${kind} has no code; expected all of them in the book`);
    return code;
  };
}

function fileRecord(
  file: PlannedFile,
  patients: Int32Array,
  copy: Copy,
  named: Pick<FileRecord, 'copy' | 'renamed' | 'place'>,
): FileRecord {
  const { rows, ragged, passedOver, unreadable } = file.read;
  const missing = patients.reduce((sum, patient) => sum + (patient === nobody ? 1 : 0), 0);
  const { isShared } = file.patient;
  return { ...named, rows, ragged, passedOver, unreadable, nobody: missing, isShared, columns: copy.columns };
}

/** Makes the copies of all files, and the book with everybody in them. */
export function makeCopies(
  files: readonly PlannedFile[],
  dateOrders: readonly DateOrder[],
  former: CodeBook,
  { order }: { order: boolean },
  draw: Draw,
): MadeCopies {
  const all = people();
  const patients = files.map(({ of, patient }) => patientsOfRows(of.file, patient.index, all));
  const dated = files.map(({ of, roles }, at) => ({
    of,
    roles,
    dateOrder: dateOrders[at] as DateOrder,
    patients: patients[at] as Int32Array,
  }));
  const surgeons = files.flatMap(({ of, roles }) =>
    roles.flatMap((role, index) => (role.kind === 'surgeon' ? surgeonsIn(of, index) : [])),
  );
  const written = all.written();
  const wanted = [
    ...written.map((one) => ({ kind: 'patient', written: one }) as const),
    ...surgeons.map((one) => ({ kind: 'surgeon', written: one }) as const),
  ];
  const book = extendedBook(former, wanted, draw);
  const codeOf = codeIn(book);
  const codes = written.map((one) => codeOf('patient', one));
  const times = timeline(dated, draw);
  const persons = personsIn(files);
  const names = copyNames(
    files.map(({ path }) => path),
    persons,
  );
  const copies = dated.map((one, at) =>
    copyOf({
      ...one,
      zeros: times.zeros,
      rank: order ? times.ranks[at] : undefined,
      codes,
      codeOfSurgeon: (name) => codeOf('surgeon', name),
      persons,
    }),
  );
  const records = files.map((file, at) =>
    fileRecord(file, patients[at] as Int32Array, copies[at] as Copy, {
      copy: names[at]?.name as string,
      renamed: names[at]?.renamed as boolean,
      place: at + 1,
    }),
  );
  return {
    copies: copies.map((copy, at) => ({
      name: names[at]?.name as string,
      copy,
      delimiter: delimiterCharacters[files[at]?.of.file.delimiter as keyof typeof delimiterCharacters],
    })),
    book,
    record: runRecord(files, records, { written, surgeons, book, former, order, times }),
  };
}

function runRecord(
  files: readonly PlannedFile[],
  records: readonly FileRecord[],
  of: {
    written: readonly string[];
    surgeons: readonly string[];
    book: CodeBook;
    former: CodeBook;
    order: boolean;
    times: Timeline;
  },
): RunRecord {
  const { written, surgeons, book, former, order, times } = of;
  const inBook = former.entries.filter(({ kind }) => kind === 'patient');
  const keys = [...written, ...inBook.map((one) => one.written)];
  return {
    files: records,
    patients: written.length,
    newPatients: book.entries.filter(({ kind }) => kind === 'patient').length - inBook.length,
    surgeons: new Set(surgeons.map(recordKey)).size,
    order,
    operations: times.operations,
    repeatedEyes: times.zeros.repeated,
    zeroDoubles: doublesWithoutZeros(new Set(keys.map(recordKey))),
    namesAsNumbers: files.some(({ patient }) => patient.names),
  };
}
