import type { IdentifierKind } from '../../findings/detail-kinds.js';
import type { NotATable } from '../../intake/not-a-table.js';
import type { Effect, Severity } from '../../records/finding.js';

/** What the words of a finding may speak of; texts are '' and numbers NaN where there is nothing to say. */
export interface Telling {
  severity: Severity;
  /** Header as written. */
  column: string;
  /** Our field. */
  field: string;
  /** The value as written, or what the rule put in its place. */
  value: string;
  detail: number;
  /** The limits that were passed, with their unit. */
  limits: string;
  /** Line of audit.yaml that the finding is about; 0 where there is none. */
  line: number;
  /** Headers of the file; '' where none of them is known, since the first row of data may stand in their place. */
  headers: string;
  /** Which kind of person's detail, or of file, it is. */
  kind: string;
}

/** Words of one rule. `title` stands for all findings of one severity. */
export interface RuleWords {
  title(t: Telling): string;
  /** What is wrong here. */
  sentence(t: Telling): string;
  expected(t: Telling): string;
  /** What to do: tentative where the value may be right. */
  act(t: Telling): string;
}

const inAudit = (t: Telling): string => (t.line > 0 ? `audit.yaml line ${t.line}, ` : 'in audit.yaml ');
const writeOne = (t: Telling): string => `${inAudit(t)}write one of`;
const quoted = (value: string): string => `‘${value}’`;
const checkChart = 'check the chart; correct the export if this is a slip';

/** A rule on single values: what is impossible, what is unusual. */
function range(what: string, slip: string): RuleWords {
  const outside = (t: Telling): boolean => t.severity === 'set aside';
  return {
    title: (t) => (outside(t) ? `${what} outside ${t.limits}` : `unusual ${what}`),
    sentence: (t) => (outside(t) ? `${quoted(t.value)} cannot be ${article(what)}` : `${quoted(t.value)} is unusual`),
    expected: (t) => (outside(t) ? t.limits : `most lie in ${t.limits}`),
    act: (t) => (outside(t) ? `check the chart; ${slip}` : checkChart),
  };
}

const article = (what: string): string => `${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what}`;

/** A rule whose words are the same wherever it is met. */
function plain(title: string, sentence: string, expected: string, act: string): RuleWords {
  return { title: () => title, sentence: () => sentence, expected: () => expected, act: () => act };
}

const files = {
  'file-missing': {
    title: () => 'file not found',
    sentence: (t) => (t.value === '' ? 'there is no such file' : `there is no such file; ${t.value} is there`),
    expected: () => 'a file of this name, from the folder of audit.yaml; * stands for any letters',
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
    act: () => 'open it in the program that made it and save the sheet as CSV (UTF-8)',
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

const columns = {
  'column-missing': {
    title: () => 'column not found',
    sentence: (t) => {
      if (t.detail > 1) return `there is no column of this header number ${t.detail}`;
      return t.value === '' ? 'there is no such column' : `there is no such column; nearest is "${t.value}"`;
    },
    expected: (t) => (t.headers === '' ? 'a header with the columns that audit.yaml names' : `one of ${t.headers}`),
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
  'prediction-open': {
    title: () => 'several predictions, none named',
    sentence: (t) => `there are predictions by ${t.value}`,
    expected: () => 'the one that the audit is about',
    act: () => 'in audit.yaml under predictions write primary_formula',
  },
  'identifier-present': {
    title: () => 'column that identifies persons',
    sentence: (t) => `the column ${t.kind}; its cells are not shown`,
    expected: () => 'no name, number, address or date of birth of a person',
    act: () => 'leave the column out of the export; if it is harmless, declare it in audit.yaml with a reason',
  },
} satisfies Record<string, RuleWords>;

const rows = {
  'patient-missing': plain(
    'row without a patient',
    'the row names no patient',
    'the code of a patient',
    'complete the code in the export',
  ),
  'eye-missing': {
    title: () => 'row without an eye',
    sentence: (t) => (t.value === '' ? 'the row names no eye' : `${quoted(t.value)} names no eye`),
    expected: () => 'right or left: R, L, OD, OS, or words declared in audit.yaml',
    act: (t) => `complete the export, or declare the word: ${inAudit(t)}words: { right: […], left: […] }`,
  },
  'eye-both': {
    title: () => 'row for both eyes',
    sentence: (t) => `${quoted(t.value)} means both eyes`,
    expected: () => 'one row an eye',
    act: () => 'give each eye a row of its own in the export',
  },
  'surgery-date-missing': plain(
    'operation without a date',
    'the operation has no date, or none that can be read',
    'the day of surgery',
    'complete the date in the export',
  ),
  'number-unreadable': {
    title: () => 'number that cannot be read',
    sentence: (t) => `${quoted(t.value)} is no number`,
    expected: (t) => `a number in the unit of ${t.field}, or a word that says there is none`,
    act: () => 'correct the cell; a word for "no value" can be declared under reading.missing',
  },
  'acuity-unreadable': {
    title: () => 'acuity that cannot be read',
    sentence: (t) => `${quoted(t.value)} is no acuity`,
    expected: () => 'a fraction, a number on the declared scale, or a word such as CF or HM',
    act: () => 'correct the cell; a word for "no value" can be declared under reading.missing',
  },
  // Dates are read and never written: these sentences stand in files, so they do not quote the cell.
  'date-unreadable': plain(
    'date that cannot be read',
    'this is no date, or not in the order of the file',
    'a date in the order of the file',
    'correct the cell in the export',
  ),
  'word-unknown': {
    title: () => 'word that is in no list',
    sentence: (t) => `${quoted(t.value)} is in no list of ${t.field}`,
    expected: (t) => `a word that audit.yaml lists for ${t.field}`,
    act: (t) => `add it to a list: ${inAudit(t)}words, or under values`,
  },
  'same-key-equal': plain(
    'same row twice',
    'another row says the same of the same eye and day',
    'one row a measurement',
    'nothing: it is counted once',
  ),
  'same-key-differs': plain(
    'same eye and day, two values',
    'another row says something else of the same eye, day and device',
    'one value a measurement',
    'check the chart; keep the right row, or name the file to prefer in audit.yaml',
  ),
} satisfies Record<string, RuleWords>;

const values = {
  'sphere-range': range('sphere', 'a lost decimal mark is likely'),
  'cylinder-range': range('cylinder', 'a lost decimal mark is likely'),
  'axis-range': range('axis', 'a slipped digit is likely'),
  'keratometry-range': range('keratometry', 'a slip of decimal mark or unit is likely'),
  'axial-length-range': range('axial length', 'a slip of the decimal mark is likely'),
  'acuity-range': range('acuity', 'a slip of decimal mark or scale is likely'),
  'axis-missing': plain(
    'cylinder without an axis: no vector',
    'a cylinder stands here without its axis',
    'an axis from 0 to 180 degrees beside every cylinder',
    'check the chart; complete the axis if it was recorded',
  ),
  'axis-not-mapped': {
    title: () => 'cylinders without a column for the axis',
    sentence: (t) => `${t.detail} cylinders have no axis, because no column is named for it`,
    expected: () => 'a column with the axis',
    act: (t) => `name it: ${inAudit(t)}columns: { axis: … }`,
  },
  'surgery-without-exam': plain(
    'operated eye without an examination',
    'no file measures this eye',
    'the eye’s examinations, under the same code and side',
    'check whether another file writes its code or side differently',
  ),
  'exam-without-surgery': plain(
    'examined eye without an operation',
    'no surgery list names this eye',
    'the eye’s operation, under the same code and side',
    'check whether the surgery list writes its code or side differently',
  ),
} satisfies Record<string, RuleWords>;

const effects: Readonly<Record<Effect, string>> = {
  kept: 'kept',
  'value left out': 'this value is left out',
  'vector left out': 'astigmatism left out, sphere and cylinder kept',
  'refraction left out': 'refraction left out, acuity kept',
  'keratometry left out': 'keratometry left out',
  'acuity left out': 'this acuity left out',
  'row left out': 'the row is left out',
  'nothing published': 'nothing is published',
};

const identifiers: Readonly<Record<IdentifierKind, string>> = {
  'header-name': 'is headed like names of persons',
  'header-birth': 'is headed like a birth',
  'header-address': 'is headed like an address',
  'header-contact': 'is headed like a way to reach a person',
  'header-number': 'is headed like a number of a person',
  'header-photo': 'is headed like pictures',
  'value-email': 'holds what looks like an e-mail address',
  'value-web-address': 'holds what looks like a web address',
  'value-phone': 'holds what looks like a telephone number',
  'value-person': 'holds what looks like surname and first name',
  'value-birth-date': 'holds what looks like dates of birth',
  'value-long-number': 'holds long numbers where a code is expected',
  'value-national-number': 'holds numbers with the check digit of a national number',
};

const fileKinds: Readonly<Record<NotATable, string>> = {
  workbook: 'a workbook',
  pdf: 'a PDF',
  archive: 'an archive',
  image: 'an image',
  'web page': 'a web page',
  binary: 'binary content',
};

/** English words: findings, rule by rule. */
export const findings = {
  rules: { ...files, ...columns, ...rows, ...values } as Readonly<Record<string, RuleWords>>,
  effects,
  identifiers,
  fileKinds,
  /** A pair of limits with its unit. */
  between: (low: string, high: string, unit: string) => `${low} to ${high}${unit === '°' ? '' : ' '}${unit}`,
  eye: { right: 'right', left: 'left' },
  before: 'before',
};
