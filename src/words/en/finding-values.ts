import { answers } from './finding-answers.js';
import { comparisons } from './finding-comparisons.js';
import { examinations } from './finding-examinations.js';
import { columnHabits } from './finding-habits.js';
import { ranges } from './finding-ranges.js';
import { inAudit, plain, quoted, type RuleWords } from './finding-words.js';

/** English words: rows and cells that cannot be read, or say two things. */
export const rows = {
  'patient-missing': plain(
    'row without a patient',
    'the row names no patient',
    'the code of a patient',
    'complete the code in the export',
  ),
  'eye-missing': {
    title: () => 'row without an eye',
    sentence: (t) => (t.value === '' ? 'the row names no eye' : `${quoted(t.value)} names no eye`),
    expected: (t) => `right or left: R, L, OD, OS, or words declared in ${t.audit}`,
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
    expected: (t) => `a word that ${t.audit} lists for ${t.field}`,
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

/** English words: rules of plausibility. */
export const values = {
  ...answers,
  ...ranges,
  ...comparisons,
  ...columnHabits,
  ...examinations,
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
