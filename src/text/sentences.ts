import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import { headlineError } from '../tables/headline-error.js';
import { levelText } from '../tables/level.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { Words } from '../words/index.js';

/** What the sentences are made from: rows over all eyes, and the words. */
interface Speaker {
  results: Results;
  words: Words;
  level: string;
}

/**
 * Three plain sentences for the head of the report: who was operated and whose outcome is known; how close the
 * refraction came; what is seen and what went wrong. Every share stands with its count and its interval.
 *
 * @throws {RangeError} when a row that belongs to a measure of the audit is not there
 */
export function sentences(results: Results, plan: Plan, words: Words): readonly string[] {
  const speaker = { results, words, level: levelText(plan) };
  return [followUpSentence(speaker), refractionSentence(speaker), outcomeSentence(speaker)];
}

function followUpSentence(speaker: Speaker): string {
  const { results, words } = speaker;
  const { joined, known, nothingDue, operated } = words.tables.text.sentences;
  const eyes = results.get('eyes_operated', 'all', 'count');
  const share = results.get('completeness', 'all', 'share');
  const outcome =
    share.value === undefined
      ? nothingDue
      : known(countText(results.get('completeness', 'all', 'count')), count(share.n), shareText(share, speaker));
  return joined(operated(count(eyes.n), count(eyes.patients)), outcome);
}

function refractionSentence(speaker: Speaker): string {
  const { results, words } = speaker;
  const { sentences: say, reference } = words.tables.text;
  const error = headlineError(results);
  if (error === undefined) return say.single(say.noRefraction);
  const share = results.get(error, 'all', 'share_within_0.50');
  const inside = countText(results.get(error, 'all', 'count_within_0.50'));
  const within = say.within(inside, count(share.n), shareText(share, speaker), reference[error]);
  return say.joined(within, meanText(results.get(error, 'all', 'mean'), speaker));
}

function outcomeSentence(speaker: Speaker): string {
  const { corrected, complication, joined, noAcuity, noComplication } = speaker.words.tables.text.sentences;
  const acuity = clause(speaker, 'cdva', '_at_or_better_20/40', corrected) ?? noAcuity;
  return joined(acuity, clause(speaker, 'any_complication', '', complication) ?? noComplication);
}

/** One share as a clause; undefined where no eye of the audit has the measure. */
function clause(
  speaker: Speaker,
  measure: string,
  suffix: string,
  say: (events: string, n: string, share: string) => string,
): string | undefined {
  const { results } = speaker;
  if (!results.find(measure, 'all', 'n')?.value) return undefined;
  const share = results.get(measure, 'all', `share${suffix}`);
  return say(countText(results.get(measure, 'all', `count${suffix}`)), count(share.n), shareText(share, speaker));
}

/** The mean error in words; its sign is told, not shown, and one that is typeset as 0.00 has no direction. */
function meanText(mean: ResultRow, { words, level }: Speaker): string {
  const say = words.tables.text.sentences;
  const limits = intervalText(mean, words);
  const interval = limits === undefined ? '' : say.limits(level, limits);
  const text = valueText(mean, words);
  const amount = text.replace('\u2212', '');
  if (Number(amount) === 0) return say.meanZero(interval);
  return say.mean(amount, text === amount ? say.moreHyperopic : say.moreMyopic, interval);
}

function shareText(share: ResultRow, { words, level }: Speaker): string {
  const { exact, sentences: say } = words.tables.text;
  const limits = intervalText(share, words);
  const percent = valueText(share, words);
  if (limits === undefined) return say.bareShare;
  return say.share(percent, level, share.method.startsWith('exact') ? exact(limits) : limits);
}

function countText(row: ResultRow): string {
  return count(row.value ?? 0);
}
