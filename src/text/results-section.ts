import { axisText } from '../format/axis.js';
import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import { cohortColumns } from '../tables/cohorts.js';
import { headlineError } from '../tables/headline-error.js';
import { levelText } from '../tables/level.js';
import { markdownText } from '../tables/render/markdown.js';
import type { Column } from '../tables/shapes.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { Words } from '../words/index.js';
import { sentences } from './sentences.js';
import { verdictSentences } from './verdicts.js';

/** What a sentence on one group of eyes is made from. */
interface Speaker {
  results: Results;
  plan: Plan;
  words: Words;
  group: string;
}

type Clauses = (speaker: Speaker) => readonly string[];

/**
 * results.md: a Results section in draft, one sentence a group of eyes and subject, each made from results rows. What
 * the data do not tell is not mentioned.
 *
 * @throws {RangeError} when a row that belongs to a measure of the audit is not there
 */
export function resultsSection(results: Results, plan: Plan, words: Words): string {
  const text = words.resultsSection;
  const columns = cohortColumns(results, plan, words);
  const grouped = (clauses: Clauses): readonly string[] =>
    columns.flatMap((column) => sentenceOf(column, clauses({ results, plan, words, group: column.group }), words));
  const { sections } = text;
  const subjects = [
    [sections.eyes, sentences(results, plan, words).slice(0, 1)],
    [sections.refraction, grouped(refraction)],
    [sections.astigmatism, grouped(astigmatism)],
    [sections.acuity, grouped(acuity)],
    [sections.safety, grouped(safety)],
    [sections.comparison, verdictSentences(results, plan, words)],
  ] as const;
  const told = subjects.filter(([, lines]) => lines.length > 0);
  return `${[
    `# ${text.heading}`,
    text.about,
    ...told.flatMap(([heading, lines]) => [`## ${heading}`, ...lines.map(markdownText)]),
  ].join('\n\n')}\n`;
}

function sentenceOf({ label }: Column, clauses: readonly string[], { resultsSection: text }: Words): readonly string[] {
  return clauses.length === 0 ? [] : [text.group(label, text.joined(clauses))];
}

function refraction(speaker: Speaker): readonly string[] {
  const error = headlineError(speaker.results);
  if (error === undefined) return [];
  const { errors, mean, sd, meanAbsolute, medianAbsolute, within } = speaker.words.resultsSection;
  return measured(speaker, error, (row) => [
    mean(errors[error], estimate(speaker, row('mean'))),
    sd(estimate(speaker, row('sd'))),
    meanAbsolute(estimate(speaker, row('mean_absolute'))),
    medianAbsolute(estimate(speaker, row('median_absolute'))),
    ...['0.50', '1.00'].map((limit) => share(speaker, error, `_within_${limit}`, within(limit))),
  ]);
}

function astigmatism(speaker: Speaker): readonly string[] {
  const { cylinder, centroid } = speaker.words.resultsSection;
  const { words, results, group } = speaker;
  const recorded = 'refractive_cylinder_after_recorded';
  const told = measured(speaker, recorded, () => [share(speaker, recorded, '_within_0.50', cylinder('0.50'))]);
  const part = (name: string) => results.find('refractive_cylinder_after', group, `centroid_${name}`);
  const [magnitude, axis] = [part('magnitude'), part('axis')];
  if (magnitude?.value === undefined || axis?.value === undefined) return told;
  return [...told, centroid(words.charts.doubleAngle.vector(valueText(magnitude, words), axisText(axis.value)))];
}

function acuity(speaker: Speaker): readonly string[] {
  const { corrected, uncorrected, mean, measures } = speaker.words.resultsSection;
  const say = { cdva: corrected, udva: uncorrected } as const;
  return (['cdva', 'udva'] as const).flatMap((measure) =>
    measured(speaker, measure, (row) => [
      mean(measures[measure], estimate(speaker, row('mean'))),
      share(speaker, measure, '_at_or_better_20/40', say[measure]('20/40')),
    ]),
  );
}

function safety(speaker: Speaker): readonly string[] {
  const measure = 'any_complication';
  return measured(speaker, measure, () => [share(speaker, measure, '', speaker.words.resultsSection.complication)]);
}

/** Clauses on a measure that at least one eye of the group has: how many eyes first. */
function measured(
  { results, words, group }: Speaker,
  measure: string,
  clauses: (row: (statistic: string) => ResultRow) => readonly string[],
): readonly string[] {
  const eyes = results.find(measure, group, 'n');
  if (!eyes?.value) return [];
  const row = (statistic: string): ResultRow => results.get(measure, group, statistic);
  const missing = valueText(row('missing'), words);
  return [words.resultsSection.counted(valueText(eyes, words), missing, count(eyes.patients)), ...clauses(row)];
}

/** A value with its unit and interval; without one the value alone. */
function estimate({ plan, words }: Speaker, row: ResultRow): string {
  const value = valueText(row, words);
  const shown = row.unit === 'D' && row.value !== undefined ? words.tables.text.dioptres(value) : value;
  const limits = intervalText(row, words);
  return limits === undefined ? shown : words.resultsSection.estimate(shown, levelText(plan), limits);
}

function share({ results, plan, words, group }: Speaker, measure: string, suffix: string, what: string): string {
  const row = results.get(measure, group, `share${suffix}`);
  const events = valueText(results.get(measure, group, `count${suffix}`), words);
  const fraction = words.tables.text.fraction(events, count(row.n));
  const limits = intervalText(row, words);
  const text = words.resultsSection;
  if (limits === undefined) return text.bareShare(what, fraction);
  const percent = words.tables.text.percent(valueText(row, words));
  return text.share(what, fraction, text.estimate(percent, levelText(plan), limits));
}
