import { isRatio } from '../comparison/compared.js';
import { axisText } from '../format/axis.js';
import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import { type CohortPair, cohortPairs } from '../tables/cohort-pairs.js';
import { type ComparedOutcome, comparedOutcomes, isOpen } from '../tables/compared-outcomes.js';
import { primaryLevel } from '../tables/comparison-notes.js';
import { reasonOf } from '../tables/marks.js';
import { declaredText, outcomeText, withUnit } from '../tables/outcome-words.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { Words } from '../words/index.js';

/** What a sentence is made from. */
interface Speaker {
  results: Results;
  plan: Plan;
  words: Words;
  pair: CohortPair;
}

/**
 * Whether one cohort is better than the other, one plain sentence for each primary outcome in the words of the verdict
 * table, and that the rest has none. Where the question stays open, what these eyes could have shown.
 *
 * @returns none where the audit compares no cohorts
 */
export function verdictSentences(results: Results, plan: Plan, words: Words): readonly string[] {
  const told = cohortPairs(results, words).flatMap((pair) => {
    const primaries = comparedOutcomes(results, plan, pair.group).filter(({ isPrimary }) => isPrimary);
    return primaries.map((outcome) => sentenceOf({ results, plan, words, pair }, outcome));
  });
  return told.length === 0 ? [] : [...told, words.tables.comparison.sentences.exploratory];
}

function sentenceOf(speaker: Speaker, outcome: ComparedOutcome): string {
  const { words, pair } = speaker;
  const { answers, sentences } = words.tables.comparison;
  const { compared, reference } = pair;
  const what = outcomeText(outcome, words);
  const { verdict, margin } = outcome;
  if (verdict === undefined) {
    return sentences.notEstimable(what, compared.label, reference.label, reasonOf(outcome.row, words)).trimEnd();
  }
  const answer = answers[verdict](compared.label, reference.label);
  return [
    sentences.verdict(what, answer, differenceText(speaker, outcome)),
    ...(margin === undefined ? [] : [sentences.margin(declaredText(outcome, margin, words))]),
    ...(isOpen(outcome) ? openSentences(speaker, outcome) : []),
  ].join(' ');
}

/** The difference with its interval, or as a vector with its region. */
function differenceText(speaker: Speaker, outcome: ComparedOutcome): string {
  const { results, words } = speaker;
  const { difference, effect, ratio } = words.tables.comparison.sentences;
  const { one, row } = outcome;
  if (one.by === 'centroid') return vectorText(speaker, outcome);
  const say = isRatio(one) ? ratio : one.by === 'effect' ? effect : difference;
  return say(withUnit(row, words), primaryLevel(results), intervalText(row, words) ?? '');
}

function vectorText({ results, words, pair }: Speaker, { row }: ComparedOutcome): string {
  const part = (name: string): ResultRow => results.get(row.measure, pair.group, `difference_${name}`);
  const text = (name: string): string => valueText(part(name), words);
  const { magnitude, vector } = words.charts.doubleAngle;
  const axis = part('axis').value;
  const told = axis === undefined ? magnitude(text('magnitude')) : vector(text('magnitude'), axisText(axis));
  const say = words.tables.comparison.sentences.vector;
  return say(told, primaryLevel(results), text('ellipse_major'), text('ellipse_minor'));
}

/** What these eyes could have shown, and how many a declared difference would need. */
function openSentences({ results, words, pair }: Speaker, outcome: ComparedOutcome): readonly string[] {
  const { needed, small, smallRatio } = words.tables.comparison.sentences;
  const find = (name: string): ResultRow | undefined =>
    results.find(outcome.row.measure, pair.group, `${name}:${outcome.one.statistic}`);
  const detectable = find('detectable');
  const declared = [
    { row: find('eyes_needed'), distance: outcome.difference },
    { row: find('eyes_needed_margin'), distance: outcome.margin },
  ];
  return [
    ...(detectable ? [(isRatio(outcome.one) ? smallRatio : small)(withUnit(detectable, words))] : []),
    ...declared.flatMap(({ row, distance }) => {
      if (row?.value === undefined || distance === undefined) return [];
      return [needed(count(row.value), declaredText(outcome, distance, words))];
    }),
  ];
}
