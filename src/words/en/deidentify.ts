import type { BookFault } from '../../deidentify/code-book.js';
import type { LeftOut, Role } from '../../deidentify/roles.js';
import type { NotATable } from '../../intake/not-a-table.js';
import { deidentifyRecord } from './deidentify-record.js';
import { findings } from './findings.js';

const counted = (count: string, one: string, many: string): string => `${count} ${count === '1' ? one : many}`;

/** Why a column has no copy; the column is the subject. */
const leftOut: Readonly<Record<LeftOut, string>> = {
  ...findings.identifiers,
  'patient-number': 'is another number of the patient',
  'own-number': 'holds numbers like those of records, or days counted as spreadsheets do',
  'part-date': 'holds months and years, or days and months',
  'row-number': 'numbers the rows',
  'free-text': 'holds free text',
  'unknown-words': 'holds words whose meaning is not known',
  'birth-year': 'holds no full dates: an age at surgery cannot be worked out',
  blank: 'is blank',
};

/** What was done with a column. */
const done: Readonly<Record<Exclude<Role['kind'], 'left-out'>, string>> = {
  patient: 'random code',
  'surgery-date': 'year of surgery',
  date: 'days from surgery',
  birth: 'age at surgery',
  age: 'whole years, 90 and more as 90+',
  surgeon: 'surgeons by code',
  numbers: 'numbers as they stand',
  labels: 'codes and labels as they stand',
  reviewed: 'text that was read through',
};

const bookFaults: Readonly<Record<BookFault['fault'], string>> = {
  header: 'its first row is not kind, code, written',
  kind: 'the kind is neither patient nor surgeon',
  code: 'the code is none that may stand in a copy',
  twice: 'the code or the number stands in the book twice',
  blank: 'there is no number beside the code',
  id: 'the row "book" with the name of the book is missing',
  quote: 'a quotation mark is left open',
};

/** English words: the command `deidentify`. */
export const deidentify = {
  record: deidentifyRecord,
  leftOut,
  done,

  help: {
    about: 'copies of exports without what identifies persons, and a code book that stays in the clinic',
    files: 'the exports, as CSV; * stands for any letters',
    codebook: 'the code book; made where there is none',
    out: 'folder for the copies',
    patient: 'header of the patient’s number; may be given more than once',
    surgeryDate: 'header of the date of surgery, where it is not recognised; may be given more than once',
    dateOrder: 'day-first, month-first or year-first, for files whose dates may be read both ways',
    orders: 'It is day-first, month-first or year-first.',
    keep: 'header of free text that was read through and may be kept; may be given more than once',
    noOrder: 'leaves out the rank of each operation in its year',
    yes: 'asks nothing; takes the likelier column of the patient, and years where no surgery is dated',
  },

  questions: {
    patient: 'two columns may hold the patient’s number',
    candidate: (keys: number, files: number) =>
      `${keys} different, ${files === 0 ? 'shared with no other file' : `shared with ${counted(String(files), 'other file', 'other files')}`}`,
    dateOrder: 'every date can be read in two ways',
    orders: {
      'day-first': '03/04/2025 is the third of April',
      'month-first': '03/04/2025 is the fourth of March',
      'year-first': '03/04/25 is the twenty-fifth of April 2003',
    },
  },

  title: (files: string, rows: string) =>
    `De-identified ${counted(files, 'file', 'files')}, ${counted(rows, 'row', 'rows')}. Your files were not changed.`,
  file: (place: number) => `file ${place}`,
  fileRows: (rows: string) => counted(rows, 'row', 'rows'),
  fileColumns: (same: string, turned: string, out: string) =>
    `${counted(same, 'column', 'columns')} as they stand, ${turned} turned, ${out} left out`,
  turned: 'turned',
  out: 'left out',
  became: (header: string, became: string) => `"${header}" → ${became}`,
  because: (header: string, why: string) => `"${header}" ${why}`,
  merged: 'age',
  more: (n: string) => `… ${n} more, see the record`,
  codes: 'codes',
  codesText: (patients: string, fresh: string, surgeons: string, book: string) => {
    const others = surgeons === '0' ? '' : `, ${counted(surgeons, 'surgeon', 'surgeons')}`;
    return `${counted(patients, 'patient', 'patients')}, ${fresh} of them new${others}. ${book} leads back to them: it stays in the clinic, for this account alone.`;
  },
  care: 'Read with care',
  notes: {
    renamed: (n: string) =>
      `${counted(n, 'file name looks', 'file names look')} like a person’s; the copy is called by its place.`,
    withoutSurgery: (n: string) =>
      `${counted(n, 'date belongs', 'dates belong')} to an eye without an operation in these files: no days, and the year only where no eye of the patient was operated.`,
    removed: (n: string, word: string) =>
      `${counted(n, 'cell', 'cells')} could not be shown to be harmless; “${word}” stands there, and run sets it aside.`,
    ragged: (n: string) => `${counted(n, 'row has', 'rows have')} too few or too many cells and no copy.`,
    unreadable: (n: string) => `${counted(n, 'cell holds', 'cells hold')} a character that the encoding does not know.`,
    nobody: (n: string) => `${counted(n, 'row names', 'rows name')} no patient.`,
    repeated: (n: string) =>
      `${counted(n, 'eye has', 'eyes have')} more than one lens operation: days count from the first.`,
    zeros: (n: string) =>
      `${n} numbers of patients differ from another in leading zeros alone: has a spreadsheet dropped them? They were taken for different patients.`,
    notShared: (file: string) => `${file} has no patient in common with the other files.`,
    names: 'Patients are told apart by names: two of one name are taken for one.',
    order:
      'Operations have their rank in the year: that is a decision for your data protection officer. --no-order leaves it out.',
    noOperation: 'No file tells of an operation.',
  },
  replaced: 'The former copies, made with the same code book, were replaced.',
  next: (record: string, copies: string) => `read ${record}; then halfdiopter propose ${copies}`,

  stopped: (reasons: string) =>
    reasons === '1' ? 'Stopped. Nothing was written.' : `Stopped for ${reasons} reasons. Nothing was written.`,
  nextStopped: 'halfdiopter deidentify again, when that is settled',
  all: 'all files',
  unfit: {
    missing: { sentence: 'there is no such file', do: 'check the name and the folder' },
    unreadable: { sentence: 'it cannot be opened or read to its end', do: 'close the program that holds it' },
    empty: { sentence: 'it holds no header with rows below it', do: 'export it again, or leave it out' },
    'no-header': {
      sentence: 'no row of headers was found: words, and no date or number among them',
      do: 'put a row of headers above the data, and export again',
    },
    'quote-open': { sentence: 'a cell opens with a quotation mark that is not closed', do: 'close or remove it' },
    'header-changes': {
      sentence: 'another header stands further down, below which the cells mean something else',
      do: 'put the two tables into two files',
    },
  },
  notCsv: (kind: NotATable) => `this is ${findings.fileKinds[kind]}, not a table of text`,
  notCsvDo: 'open it in the program that made it and save the sheet as CSV (UTF-8)',
  row: (sentence: string, row: number) => `row ${row}: ${sentence}`,
  reasons: {
    patientNone: 'no column is known to hold the patient’s number',
    patientNoneDo: 'name its header: --patient "HEADER"',
    patientOpen: (headers: string) => `which column holds the patient’s number is not clear: ${headers}`,
    patientOpenDo: 'name it: --patient "HEADER"; or --yes takes the first',
    dateOpen: 'every date can be read with the day or with the month first',
    dateMixed: 'no order of day, month and year reads all its dates',
    dateOpenDo: 'say which: --date-order day-first or --date-order month-first',
    dateMixedDo: 'export again with one order; or name one with --date-order, and dates that do not fit are removed',
    noSurgery: (headers: string) => `there are dates (${headers}), and none is known to be that of surgery`,
    noSurgeryDo: 'add the surgery list, or name the header: --surgery-date "HEADER"; or --yes keeps years alone',
  },

  notStarted: {
    'book-inside': 'Not started. The code book would lie in the folder of the copies.',
    'book-is-folder': 'Not started. The code book is a folder; give the name of a file.',
    'book-folder-missing': 'Not started. The folder of the code book does not exist.',
    'book-is-export': 'Not started. The code book is one of the exports.',
    'out-is-file': 'Not started. There is a file where the folder of the copies should be.',
    'export-inside': 'Not started. The folder of the copies holds one of the exports.',
    'out-foreign':
      'Not started. The folder of the copies holds files that no former run wrote, or that were changed since.',
    'out-other-book': 'Not started. The folder holds copies that were made with another code book.',
    'out-other-names': 'Not started. The folder holds copies of other files.',
  },
  mend: {
    'book-inside': 'put the code book where the copies do not go: who has both can name every patient',
    'book-is-folder': 'add a name, such as codes.csv',
    'book-folder-missing': 'make the folder, on a disk of the clinic',
    'book-is-export': 'name another file; it is made where there is none',
    'out-is-file': 'name another folder',
    'export-inside': 'name another folder: exports and copies must not be mixed up',
    'out-foreign': 'name another folder, or empty this one',
    'out-other-book': 'use that code book, or name another folder',
    'out-other-names': 'name the same files, or another folder',
  },
  locked: 'Not started. Another run is using the code book at this moment.',
  mendLocked: (lock: string) => `wait for it to end. If none is running, remove ${lock}`,
  bookFault: (row: number, fault: BookFault['fault']) =>
    `Not started. The code book cannot be used: row ${row}, ${bookFaults[fault]}.`,
  mendBook: 'mend that row, or take the last good copy of the book. Without it the old codes are lost',
  noColumn: (option: string, column: string, nearest: string | undefined) =>
    `Not started. ${option}: no file has a column "${column}"${nearest ? `; nearest is "${nearest}"` : ''}.`,
  mendColumn: 'write the header as it stands in the file',
  keepIdentifier: (column: string) =>
    `Not started. --keep "${column}": the column identifies persons and cannot be kept.`,
  mendKeep: 'leave it out of --keep; if its header misleads, give the column another one in the export',
};
