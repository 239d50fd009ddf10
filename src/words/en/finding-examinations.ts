import { noDay } from '../../records/canonical.js';
import { plain, type RuleWords } from './finding-words.js';

/** English words: dates, labels, and operations. Dates are read and never written: days are told instead. */
export const examinations = {
  'exam-after-export': {
    title: () => 'examination after the day of the export',
    sentence: (t) => `the date lies ${t.detail} days after the data were exported`,
    expected: () => 'a date up to data_until',
    act: () => 'check the chart; a slip of year or month is likely',
  },
  'exam-late': {
    title: (t) => (t.severity === 'set aside' ? 'examination more than ten years later' : 'examination years later'),
    sentence: (t) => `the examination is dated ${t.detail} days after surgery`,
    expected: (t) => `at most ${t.threshold(t.severity === 'set aside' ? 'last_exam' : 'late_exam')} days`,
    act: () => 'check the chart; a slip of the year is possible',
  },
  'exam-before-surgery': {
    title: () => 'labelled after surgery, dated before it',
    sentence: (t) => `the examination is labelled as one after surgery and dated ${-t.detail} days before it`,
    expected: () => 'a date after the day of surgery',
    act: () => 'check both dates; a slip of the year is likely',
  },
  'exam-label': {
    title: () => 'date and label name different visits',
    sentence: (t) => `day ${t.detail} from surgery belongs to another visit than the label`,
    expected: () => 'a date inside the window of the visit that the label names',
    act: () => 'check date and label; follow_up.visit_by says which of them counts',
  },
  'outcome-none': {
    title: (t) => (Number.isNaN(t.detail) ? 'no examination after surgery in any file' : 'no eye has an outcome'),
    sentence: (t) => {
      if (Number.isNaN(t.detail)) return 'no file holds an examination after surgery of any eye';
      const days = Number.isFinite(t.detail) ? `, though examinations are from day ${t.detail} to ${t.other}` : '';
      return `no eye was examined at the outcome visit (${t.value})${days}`;
    },
    expected: () => 'an examination after surgery for refraction, acuity and prediction',
    act: (t) =>
      Number.isNaN(t.detail)
        ? `add the export of examinations after surgery to the sources of ${t.audit}; without it operations alone are told`
        : `check follow_up of ${t.audit}: the days of the visits, their labels, and which visit is the outcome`,
  },
  'incision-axis-missing': plain(
    'incision without an axis',
    'the incision has a width, and its place is blank',
    'degrees, or the hour of the clock',
    'complete the place of the incision if it was recorded',
  ),
  'lens-axis-missing': plain(
    'toric lens without the axis intended',
    'the lens has a cylinder, and the axis it was meant for is blank',
    'degrees from 0 to 180',
    'complete the axis from the plan of the lens',
  ),
  'lens-axis-unseen': plain(
    'toric lens whose axis nobody saw after surgery',
    'the lens has a cylinder, and no examination after surgery gives its axis',
    'the axis at which the lens was seen to lie',
    'complete the axis if it was recorded',
  ),
  'second-operation': {
    title: () => 'a further operation on the eye',
    sentence: (t) =>
      t.detail === noDay ? `${t.value}, of a day that is not known` : `${t.value}, ${t.detail} days from the first`,
    expected: () => 'nothing: this is for your books',
    act: () => 'follow_up.after_second_operation says whether examinations from then on count',
  },
} satisfies Record<string, RuleWords>;
