import type { Leftover } from '../../intake/leftover.js';
import { isShortDate } from '../../intake/leftover.js';
import { fieldNamed } from '../../plan/fields.js';
import { plain, quoted, type RuleWords, writeOne } from './finding-words.js';

/** What a spreadsheet has made of a cell; the cell is quoted before it. */
export const leftoverWords: Readonly<Record<Leftover, string>> = {
  date: 'is a date: a spreadsheet has probably made it of a fraction or a decimal',
  exponent: 'is a number with an exponent, as a spreadsheet shortens long numbers',
  error: 'is what a spreadsheet shows where a formula gives no value',
  narrow: 'stands where the column of a spreadsheet was too narrow for its number',
  grouped: 'has thousands marks, which are not read',
  serial: 'is a count of days, as a spreadsheet keeps dates',
};

/** How to keep it from happening again. */
const leftoverActs: Readonly<Record<Leftover, string>> = {
  date: 'look the value up; format the column as text before it is typed or pasted, and export again',
  exponent: 'look the value up; format the column as text or as a plain number, and export again',
  error: 'mend the formula, or leave the cell blank; export again',
  narrow: 'widen the column in the spreadsheet and export again',
  grouped: 'format the column without thousands marks and export again',
  serial: 'format the column as a date in the spreadsheet and export again',
};

/** English words: rows and cells as exports and spreadsheets leave them. */
export const exports = {
  'header-row-open': {
    title: () => 'header stands lower',
    sentence: (t) => `the columns that ${t.audit} names are headed in row ${t.detail}`,
    expected: () => 'the row of the headers, counted as a spreadsheet shows it',
    act: writeOne,
  },
  'header-changes': plain(
    'another header inside the file',
    'this row is a header, and not the one at the top: below it the cells mean something else',
    'one table a file',
    'save each table as a file of its own',
  ),
  'row-header-again': plain(
    'header repeated',
    'the header stands here once more',
    'nothing: this is for your books',
    'nothing: the row is passed over',
  ),
  'row-summary': plain(
    'summary line',
    'this line sums up rows and names no eye',
    'rows of data only',
    'nothing, unless it is a row of data: then complete its eye',
  ),
  'nul-bytes': {
    title: () => 'cells with NUL characters',
    sentence: (t) => `${t.detail} cells are filled up with NUL characters, which were left out`,
    expected: () => 'text without them',
    act: () => 'check that the file is complete: an export that broke off may end like this',
  },
  'thousands-marks': {
    title: () => 'numbers with thousands marks',
    sentence: (t) => `${quoted(t.value)} has thousands marks, which are not read`,
    expected: () => 'numbers without thousands marks',
    act: (t) => `export again without them; else ${writeOne(t)}, and cells with thousands marks are set aside`,
  },
  'unit-differs': {
    title: () => 'unit of the header is not the one in use',
    sentence: (t) => `the header states ${t.value}, and ${t.audit} reads the column otherwise`,
    expected: (t) => `${t.field} in the unit in which the column is read`,
    act: (t) =>
      t.settles
        ? writeOne(t)
        : 'convert the column in the export; if it is the header that misleads, turn the rule off with a reason',
  },
  'notation-open': {
    title: () => 'sign of cylinders not clear',
    sentence: (t) => `none of ${t.detail} cylinders has a sign, the first is ${quoted(t.value)}`,
    expected: () => 'whether they are plus or minus cylinders, named once for the column',
    act: writeOne,
  },
  'eye-words-open': {
    title: () => 'which eye is meant is not clear',
    sentence: (t) => `${quoted(t.value)} name no eye, and stand in ${t.detail} cells`,
    expected: (t) => `right or left: R, L, OD, OS, or words declared in ${t.audit}`,
    act: writeOne,
  },
  'dates-serial': {
    title: () => 'dates are counts of days',
    sentence: (t) => `${t.detail} cells hold a count of days, as a spreadsheet keeps dates`,
    expected: () => 'dates such as 2025-03-14',
    act: () => leftoverActs.serial,
  },
  'column-unreadable': {
    title: () => 'most of a column cannot be read',
    sentence: (t) =>
      `${t.detail} cells, more than half of the column, cannot be read; the first is ${t.value === '' ? 'not shown here' : quoted(t.value)}`,
    expected: (t) => `values of ${t.field}`,
    act: (t) => {
      const isDate = fieldNamed(t.field)?.type === 'date';
      if (isShortDate(t.value) || (t.value === '' && !isDate)) return leftoverActs.date;
      if (t.value === '')
        return 'look at this row: a date needs its day, month and year; export again, and do not save the file from a spreadsheet';
      if (t.settles)
        return `these numbers have another decimal mark than ${t.audit} says: correct the line of this file`;
      return 'check that the right column is named, and how its values are written; words for "no value" can be declared under reading.missing';
    },
  },
  'spreadsheet-leftover': {
    title: () => 'cell changed by a spreadsheet',
    sentence: (t) => (t.value === '' ? `this ${t.kind}` : `${quoted(t.value)} ${t.kind}`),
    expected: (t) => `a value of ${t.field} as it was recorded`,
    act: (t) => leftoverActs[t.leftover ?? 'error'],
  },
  'acuity-suffix': {
    title: () => 'letters behind acuities are not counted',
    sentence: (t) => `${t.detail} acuities have letters behind them, such as ${quoted(t.value)}; the line was used`,
    expected: () => 'whether letters count, and of how many a line',
    act: (t) => `nothing; or, where a line has five letters, ${writeOne(t)}`,
  },
} satisfies Record<string, RuleWords>;
