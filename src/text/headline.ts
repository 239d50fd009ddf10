import { count, signed } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import { type Results, resultKey } from '../results/index.js';
import { headlineError } from '../tables/headline-error.js';
import { noteCodes } from '../tables/marks.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { Words } from '../words/index.js';

type HeadlineId = keyof Words['tables']['text']['labels'];

/** One of the numbers that an audit is judged by, typeset. */
export interface Headline {
  id: HeadlineId;
  label: string;
  /** Eyes with it; undefined where the number is no share. */
  numerator: string | undefined;
  /** Eyes counted. */
  n: string;
  /** '287 of 371'; '' where the number is no share, or has no interval and the fraction is the value. */
  fraction: string;
  /** '77.4 %', '−0.06 D', '421 eyes, 268 patients'. */
  value: string;
  /** '72.3 to 81.7', '0.3 to 2.4, exact'; '' where there is none. */
  interval: string;
  /** Belongs to the headline before it. */
  part: boolean;
  /** What the reader has to know of this number: few patients, why it has no interval. */
  notes: readonly string[];
  /** Keys of the results rows behind it. */
  from: readonly string[];
}

/** Limit of the shares in the headlines, dioptres, as the statistics write it. */
const half = '0.50';
const line = '20/40';

/**
 * The six headline numbers, two of them with a part below: eyes operated (outcome known), share within half a dioptre,
 * mean error, recorded cylinder, corrected acuity (uncorrected), complications. One that no eye of the audit allows is
 * left out.
 *
 * @throws {RangeError} when a row that belongs to a measure of the audit is not there
 */
export function headlines(results: Results, words: Words): readonly Headline[] {
  const { labels } = words.tables.text;
  const error = headlineError(results);
  const share = (id: HeadlineId, label: string, measure: string, suffix: string, part = false): readonly Headline[] => {
    if (!results.find(measure, 'all', 'n')?.value) return [];
    const row = (statistic: string) => results.get(measure, 'all', `${statistic}${suffix}`);
    return [headline({ id, label, part }, row('share'), row('count'), words)];
  };
  const within = `_within_${half}`;
  const reached = `_at_or_better_${line}`;
  const corrected = share('corrected', labels.corrected, 'cdva', reached);
  return [
    ...operated(results, words),
    ...(error ? share('within-half', labels['within-half'](half), error, within) : []),
    ...(error ? [meanError(results.get(error, 'all', 'mean'), words)] : []),
    ...share('cylinder', labels.cylinder(half), 'refractive_cylinder_after_recorded', within),
    ...corrected,
    ...share('uncorrected', labels.uncorrected, 'udva', reached, corrected.length > 0),
    ...share('complication', labels.complication, 'any_complication', ''),
  ];
}

/** Which error the headlines count: 'by predicted refraction'; '' where no eye has one. */
export function headlineBasis(results: Results, words: Words): string {
  const error = headlineError(results);
  return error === undefined ? '' : words.tables.text.basis[error];
}

function operated(results: Results, words: Words): readonly Headline[] {
  const { eyesAndPatients, labels } = words.tables.text;
  const eyes = results.get('eyes_operated', 'all', 'count');
  const all = {
    ...headline({ id: 'operated', label: labels.operated, part: false }, eyes, undefined, words),
    value: eyesAndPatients(count(eyes.n), count(eyes.patients)),
  };
  const known = results.get('completeness', 'all', 'share');
  if (known.value === undefined) return [all];
  const about = { id: 'outcome-known', label: labels['outcome-known'], part: true } as const;
  return [all, headline(about, known, results.get('completeness', 'all', 'count'), words)];
}

/** The mean error with its sign, plus included: which way it points is half of what it says. */
function meanError(mean: ResultRow, words: Words): Headline {
  const about = { id: 'mean-error', label: words.tables.text.labels['mean-error'], part: false } as const;
  const plain = headline(about, mean, undefined, words);
  return mean.value === undefined ? plain : { ...plain, value: words.tables.text.dioptres(signed(mean.value, 2)) };
}

function headline(
  about: Pick<Headline, 'id' | 'label' | 'part'>,
  row: ResultRow,
  events: ResultRow | undefined,
  words: Words,
): Headline {
  const { exact } = words.tables.text;
  const meanings: Readonly<Record<string, string>> = words.tables.notes.marked;
  const limits = intervalText(row, words) ?? '';
  return {
    ...about,
    ...shownValue(row, events, words),
    n: count(row.n),
    interval: row.method.startsWith('exact') && limits !== '' ? exact(limits) : limits,
    notes: noteCodes(row).flatMap((code) => meanings[code] ?? []),
    from: [row, ...(events ? [events] : [])].map(resultKey),
  };
}

/** The value with its unit; a share without an interval is shown as its fraction and never as a percentage. */
function shownValue(
  row: ResultRow,
  events: ResultRow | undefined,
  words: Words,
): Pick<Headline, 'numerator' | 'fraction' | 'value'> {
  const { dioptres, fraction, percent } = words.tables.text;
  const value = valueText(row, words);
  if (events === undefined || row.value === undefined) {
    return {
      numerator: undefined,
      fraction: '',
      value: row.unit === 'D' && row.value !== undefined ? dioptres(value) : value,
    };
  }
  const numerator = valueText(events, words);
  const ratio = fraction(numerator, count(row.n));
  const bare = row.ci_low === undefined;
  return { numerator, fraction: bare ? '' : ratio, value: bare ? ratio : percent(value) };
}
