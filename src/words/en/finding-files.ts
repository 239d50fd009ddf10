import { fileKinds } from '../../findings/detail-kinds.js';
import type { NotATable } from '../../intake/not-a-table.js';
import { inAudit, plain, quoted, type RuleWords, writeOne } from './finding-words.js';

/** What to do with a file that is no table of text. */
const howToSave: Readonly<Record<NotATable, string>> = {
  workbook: 'open it in the program that made it, show the sheet with the rows, and save that sheet as CSV (UTF-8)',
  pdf: 'export the rows as CSV (UTF-8) from the program that made the PDF; tables cannot be taken from a PDF',
  archive: 'unpack it, and name the CSV file that is inside',
  image: 'export the rows as CSV (UTF-8) from the program that holds them; tables cannot be taken from an image',
  'web page': 'open it in a spreadsheet program and save the sheet as CSV (UTF-8)',
  binary: 'open it in the program that made it and save the rows as CSV (UTF-8)',
};

/** English words: what keeps a file from being read, and rows that are not. */
export const files = {
  'file-missing': {
    title: () => 'file not found',
    sentence: (t) => (t.value === '' ? 'there is no such file' : `there is no such file; ${t.value} is there`),
    expected: (t) => `a file of this name, from the folder of ${t.audit}; * stands for any letters`,
    act: (t) => `${inAudit(t)}correct the name, or put the file there`,
  },
  'file-unreadable': plain(
    'file cannot be read',
    'it cannot be opened or read to its end',
    'a file that this account may read',
    'close the program that holds it, and check that it is a file',
  ),
  'file-empty': plain(
    'file is empty',
    'it holds no header',
    'a header and rows below it',
    'export it again, or take it out of audit.yaml',
  ),
  'file-without-rows': plain(
    'file without rows',
    'below the header there is no row',
    'at least one row',
    'check that the export was complete',
  ),
  'file-not-csv': {
    title: () => 'file is no table of text',
    sentence: (t) => `this is ${t.kind}, not a table of text`,
    expected: () => 'a CSV file: text, one row a line',
    act: (t) => howToSave[fileKinds[t.detail] ?? 'binary'],
  },
  'file-name-identifies': plain(
    'file name looks like a person’s',
    'the name of the file looks like that of a person; outputs call it by its number',
    'a file name without a name or number of a person',
    'rename the file if it names a patient',
  ),
  'delimiter-open': {
    title: () => 'delimiter not clear',
    sentence: () => 'what stands between the cells is not clear from the first rows',
    expected: () => 'a header whose cells are parted by comma, semicolon, tab or pipe, like the rows below it',
    act: writeOne,
  },
  'delimiter-other': {
    title: () => 'another delimiter than declared',
    sentence: (t) => `the header is one cell: it is parted by ${t.value}, and ${t.audit} says otherwise`,
    expected: () => 'the delimiter that stands between the cells of the file',
    act: (t) => `${inAudit(t)}correct it, and the decimal mark beside it if that was changed too`,
  },
  'quote-open': plain(
    'quotation mark left open',
    'a cell opens with a quotation mark that is not closed; the rows below it would be swallowed',
    'a closing quotation mark at the end of the cell',
    'close or remove the quotation mark in this row',
  ),
  'encoding-doubtful': {
    title: () => 'characters that cannot be read',
    sentence: (t) => `${t.detail} cells hold a character that the encoding does not know`,
    expected: () => 'the encoding in which the file was saved',
    act: (t) => `${inAudit(t)}name it: reading: { encoding: windows-1252 } or another`,
  },
  'rows-passed-over': {
    title: () => 'blank rows, rows above the header, units',
    sentence: (t) => `${t.detail} rows beside the header hold no data and were passed over`,
    expected: () => 'nothing: this is for your books',
    act: () => 'nothing, unless a row of data is among them',
  },
  'row-ragged': {
    title: () => 'row with too few or too many cells',
    sentence: (t) => `the row has ${t.detail} cells, which do not fit the header`,
    expected: () => 'one cell a header',
    act: () => 'look for a delimiter inside a cell; put the cell in quotation marks, or export again',
  },
} satisfies Record<string, RuleWords>;

/** English words: columns, and how a file writes its numbers and dates. */
export const columns = {
  'column-missing': {
    title: () => 'column not found',
    sentence: (t) => {
      if (t.detail > 1) return `there is no column of this header number ${t.detail}`;
      return t.value === '' ? 'there is no such column' : `there is no such column; nearest is "${t.value}"`;
    },
    expected: (t) => (t.headers === '' ? `a header with the columns that ${t.audit} names` : `one of ${t.headers}`),
    act: (t) => `${inAudit(t)}write the header as it stands in the file`,
  },
  'column-twice': {
    title: () => 'header met more than once',
    sentence: (t) => `${t.detail} columns have this header`,
    expected: () => 'which of them is meant, counted from the left',
    act: writeOne,
  },
  'column-impossible': {
    title: () => 'most of a column is impossible',
    sentence: (t) => `${t.detail} cells, more than half of the column, cannot be; the first is ${quoted(t.value)}`,
    expected: (t) => t.limits,
    act: (t) =>
      `check the unit of the column (${inAudit(t).trim().replace(/,$/, '')}) and the decimal mark of the file`,
  },
  'decimal-open': {
    title: () => 'decimal mark not clear',
    sentence: (t) => `${quoted(t.value)} may have decimals or thousands, and no other number in the file tells`,
    expected: () => 'one decimal mark for the file',
    act: writeOne,
  },
  'decimal-mixed': {
    title: () => 'decimal marks contradict each other',
    sentence: (t) => `numbers of the file are marked in two ways: ${quoted(t.value)}`,
    expected: () => 'one decimal mark for the file, and none for thousands',
    act: (t) => `export again with one mark; else ${writeOne(t)}, and cells marked otherwise are set aside`,
  },
  'date-order-open': {
    title: () => 'order of day and month not clear',
    sentence: () => 'this date can be read in two ways, and so can every date of the file',
    expected: () => 'one order of day, month and year for the file',
    act: writeOne,
  },
  'date-order-mixed': {
    title: () => 'dates contradict each other',
    sentence: (t) => `no order of day, month and year reads this date, that of row ${t.detail} and all others`,
    expected: () => 'one order of day, month and year for the file',
    act: (t) => `export again with one order; else ${writeOne(t)}, and dates that do not fit are set aside`,
  },
  'acuity-scale-open': {
    title: () => 'scale of acuity not clear',
    sentence: (t) =>
      `bare numbers such as ${quoted(t.value)} (${t.detail} different ones) may be of more than one scale`,
    expected: () => 'decimal, logMAR or letters, named once for the column',
    act: writeOne,
  },
  'operations-none': {
    title: () => 'no operation listed',
    sentence: () => 'no row of any file lists an operation, so there is no eye to audit',
    expected: () => 'a file of operations, one row an operated eye: patient, eye, and the date of surgery',
    act: (t) => `add the export of operations to the sources of ${t.audit}, with holds: surgery`,
  },
  'period-empty': {
    title: () => 'no operation in the period',
    sentence: (t) => `${t.detail} eyes are listed as operated, and none of them inside the period`,
    expected: () => 'operations inside period.from and period.to',
    act: (t) => `check the period in ${t.audit}, and the dates of surgery`,
  },
  'prediction-open': {
    title: () => 'several predictions, none named',
    sentence: (t) => `there are predictions by ${t.value}`,
    expected: () => 'the one that the audit is about',
    act: (t) => `in ${t.audit} under predictions write primary_formula`,
  },
  'identifier-present': {
    title: () => 'column that identifies persons',
    sentence: (t) => `the column ${t.kind}; its cells are not shown`,
    expected: () => 'no name, number, address or date of birth of a person',
    act: (t) =>
      `make a copy without it: halfdiopter deidentify FILE --codebook BOOK --out DIR; if it is harmless, declare it in ${t.audit} with a reason`,
  },
} satisfies Record<string, RuleWords>;
