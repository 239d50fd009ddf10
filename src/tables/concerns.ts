import { count } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell } from './cells.js';
import type { CohortPair } from './cohort-pairs.js';
import { followUpMeasure, outcomeFamilies } from './follow-up.js';
import { fieldLabel } from './groups.js';
import { noteCodes } from './marks.js';
import { valueText } from './value-text.js';

/** Something that may be the reason for a difference instead of the cohort. */
export interface Concern {
  id: 'confounded' | 'operated-apart' | 'learning' | 'seen-apart';
  /** In a word or two: 'surgeon'. */
  subject: string;
  text: string;
}

const overlap = 'overlap:';

/**
 * What two cohorts do not have in common: who operated with what, when, and when the eyes were seen. Told before any
 * difference is.
 */
export function concernsOf(results: Results, pair: CohortPair, words: Words): readonly Concern[] {
  const time = timeConcerns(results, pair, words);
  // Where the months are told, the years say the same again.
  const fields = mixRows(results, pair).filter(({ statistic }) => time.length === 0 || statistic !== `${overlap}year`);
  return [
    ...fields.flatMap((row) => mixConcerns(row, pair, words)),
    ...time,
    ...learningConcerns(results, pair, words),
    ...followUpConcerns(results, pair, words),
  ];
}

/** How much of the mix of each field two cohorts have in common. */
export function mixRows(results: Results, { group }: CohortPair): readonly ResultRow[] {
  return results.rows.filter(
    (row) => row.measure === 'confounding' && row.group === group && row.statistic.startsWith(overlap),
  );
}

/** The field of such a row: 'surgeon'. */
export function mixField({ statistic }: ResultRow): string {
  return statistic.slice(overlap.length);
}

function mixConcerns(row: ResultRow, { compared, reference }: CohortPair, words: Words): readonly Concern[] {
  const { concerns, confounding } = words.tables.comparison;
  const field = mixField(row);
  const subject = confounding.fields[field] ?? fieldLabel(field, words);
  const codes = noteCodes(row);
  const of = (text: string): readonly Concern[] => [{ id: 'confounded', subject, text }];
  if (codes.includes('no-overlap')) return of(concerns.none(compared.label, reference.label, subject));
  if (!codes.includes('uneven')) return [];
  return of(concerns.uneven(compared.label, reference.label, subject, valueText(row, words)));
}

/** Months in which both cohorts were operated, and from the first operation to the last; years where no day is known. */
export function timeRows(
  results: Results,
  { group }: CohortPair,
): { unit: 'months' | 'years'; common: ResultRow; all: ResultRow } {
  const unit = results.find('overlap', group, 'months') ? 'months' : 'years';
  return { unit, common: results.get('overlap', group, `overlap_${unit}`), all: results.get('overlap', group, unit) };
}

function timeConcerns(results: Results, pair: CohortPair, words: Words): readonly Concern[] {
  const { concerns, confounding } = words.tables.comparison;
  const { unit, common, all } = timeRows(results, pair);
  const { one, many } = concerns.units[unit];
  const { compared, reference } = pair;
  const codes = noteCodes(common);
  const of = (text: string): readonly Concern[] => [{ id: 'operated-apart', subject: confounding.inTime, text }];
  const span = valueText(all, words);
  if (codes.includes('no-overlap')) return of(concerns.notInTime(compared.label, reference.label, span, one));
  if (!codes.includes('uneven')) return [];
  return of(concerns.unevenTime(compared.label, reference.label, valueText(common, words), span, many));
}

/** Cohorts that hold the first eyes a surgeon did in their way. */
function learningConcerns(results: Results, { compared, reference }: CohortPair, words: Words): readonly Concern[] {
  const { concerns, confounding } = words.tables.comparison;
  const told = [compared, reference].flatMap(({ group, label }) => {
    const row = results.find('confounding', group, 'early_eyes');
    return row && noteCodes(row).includes('learning')
      ? [concerns.learningIn(label, valueText(row, words), count(row.n))]
      : [];
  });
  if (told.length === 0) return [];
  return [{ id: 'learning', subject: confounding.inLearning, text: concerns.learning(told.join('; ')) }];
}

/**
 * Standardised difference of follow-up times beyond which they are told of; tables mark them from 0.1 on.
 * Rubin DB. Health Serv Outcomes Res Methodol 2001;2:169–188, from memory.
 */
const apart = 0.25;

/** Told once, of the first family that shows it. */
function followUpConcerns(results: Results, { group, ...pair }: CohortPair, words: Words): readonly Concern[] {
  const { concerns, confounding } = words.tables.comparison;
  const family = outcomeFamilies.find((one) => {
    const row = results.find(followUpMeasure(one), group, 'standardised_difference');
    return Math.abs(row?.value ?? 0) > apart;
  });
  if (!family) return [];
  const { text: days } = estimateCell(results.get(followUpMeasure(family), group, 'difference_mean'), words);
  const what = words.tables.flow.names[family];
  const text = concerns.followUp(what, pair.compared.label, pair.reference.label, days);
  return [{ id: 'seen-apart', subject: confounding.inFollowUp, text }];
}
