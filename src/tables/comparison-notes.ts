import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { type CohortPair, designOf, referenceOf } from './cohort-pairs.js';
import { type ComparedOutcome, isOpen } from './compared-outcomes.js';
import { concernsOf } from './concerns.js';
import { followUpTimes, outcomeFamilies } from './follow-up.js';
import { levelText, percentLevel } from './level.js';
import { covariateName } from './outcome-words.js';
import type { Setting } from './shapes.js';
import { valueText } from './value-text.js';

type Told = Pick<Setting, 'results' | 'plan' | 'words'>;

/** Level of the intervals that carry a verdict: '98.3 %'. */
export function primaryLevel(results: Results): string {
  return percentLevel(results.get('primaries', 'all', 'confidence').value ?? 0);
}

/** The levels of all intervals of a comparison: '98.3 % and 95 %'. */
export function comparisonLevels(results: Results, plan: Plan, words: Words): string {
  const levels = new Set([primaryLevel(results), levelText(plan)]);
  return [...levels].join(words.tables.comparison.notes.and);
}

/**
 * Footnotes of a comparison: first what else differs between the cohorts and what was seen when; then design, signs and
 * rules of what is shown.
 *
 * @param outcomes  that the table shows
 */
export function comparisonNotes(
  setting: Told,
  pairs: readonly CohortPair[],
  outcomes: readonly ComparedOutcome[],
): readonly string[] {
  const { results, plan, words } = setting;
  const { notes } = words.tables.comparison;
  return [
    ...pairs.flatMap((pair) => concernsOf(results, pair, words).map(({ text }) => text)),
    observedNote(pairs, words),
    ...pairs.map((pair) => designNote(results, pair, words)),
    notes.differences,
    ...levelNote(setting, outcomes),
    ...multiplicityNote(setting, outcomes),
    ...statisticNotes(outcomes, words),
    ...adjustedNote(plan, words),
    followUpTimes(
      { ...setting, columns: [referenceOf(pairs), ...pairs.map(({ compared }) => compared)] },
      outcomeFamilies.filter((family) => outcomes.some(({ measure }) => measure.family === family)),
    ),
    notes.rest,
  ];
}

function observedNote(pairs: readonly CohortPair[], words: Words): string {
  const field = pairs[0]?.field ?? '';
  return words.tables.comparison.notes.observed(words.tables.titles.confounding(field));
}

/** Recognised design, with the patients that form it. */
export function designNote(results: Results, pair: CohortPair, words: Words): string {
  const { group, compared, reference } = pair;
  const text = (statistic: string): string => valueText(results.get('design', group, statistic), words);
  const code = designOf(results, pair).replace('design:', '');
  const designs: Readonly<Record<string, (...of: [string, string, string, string, string]) => string>> =
    words.tables.comparison.notes.designs;
  const tell = designs[code];
  if (!tell) throw new RangeError(`designNote: design "${code}" has no words in src/words/en/comparison.ts`);
  return tell(reference.label, text('patients_only_a'), compared.label, text('patients_only_b'), text('patients_both'));
}

/** Where primaries have another level, the cohorts beside them keep that of the audit. */
function levelNote({ results, plan, words }: Told, outcomes: readonly ComparedOutcome[]): readonly string[] {
  const isOther = outcomes.some(({ isPrimary }) => isPrimary) && primaryLevel(results) !== levelText(plan);
  return isOther ? [words.tables.comparison.notes.cohortLevel(levelText(plan))] : [];
}

function multiplicityNote({ results, plan, words }: Told, outcomes: readonly ComparedOutcome[]): readonly string[] {
  const { multiplicity, single } = words.tables.comparison.notes;
  if (!outcomes.some(({ isPrimary }) => isPrimary)) return [];
  const k = results.get('primaries', 'all', 'count').value ?? 1;
  if (k === 1) return [single];
  return [multiplicity(count(k), percentLevel(1 - plan.statistics.confidence))];
}

/** What a reader has to know of the statistics shown. */
function statisticNotes(outcomes: readonly ComparedOutcome[], words: Words): readonly string[] {
  const { centroid, effect, power, shift } = words.tables.comparison.notes;
  const has = (by: ComparedOutcome['one']['by']): boolean => outcomes.some(({ one }) => one.by === by);
  const plans = outcomes.some((outcome) => {
    const { isPrimary, difference, margin } = outcome;
    return isPrimary ? isOpen(outcome) : difference !== undefined || margin !== undefined;
  });
  return [
    ...(has('effect') ? [effect] : []),
    ...(has('shift') ? [shift] : []),
    ...(has('centroid') ? [centroid] : []),
    ...(plans ? [power] : []),
  ];
}

/** What adjusted differences are adjusted for. */
function adjustedNote({ statistics }: Plan, words: Words): readonly string[] {
  const names = statistics.adjust_for.map((name) => covariateName(name, words));
  return names.length === 0 ? [] : [words.tables.comparison.notes.adjustedFor(names.join(', '))];
}
