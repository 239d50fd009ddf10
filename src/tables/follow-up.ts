import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import type { Setting } from './shapes.js';
import { valueText } from './value-text.js';

/** Families with an outcome visit. */
export const outcomeFamilies = ['refraction', 'astigmatism', 'corrected', 'uncorrected'] as const;
export type OutcomeFamily = (typeof outcomeFamilies)[number];

/** The outcome visit by name: '3 months, else 1 month'. */
export function outcomeVisit(plan: Plan, words: Words): string {
  return plan.follow_up.outcome.join(words.tables.or);
}

/** The measure that holds the days of follow-up of a family. */
export function followUpMeasure(family: OutcomeFamily): string {
  return family === 'refraction' ? 'follow_up_days' : `follow_up_days:${family}`;
}

/**
 * Footnotes that every outcome table bears: the visit; median and range of follow-up, eyes and patients of each column;
 * which eyes operated are not in the table, and why.
 *
 * @throws {RangeError} when the family has no rows on follow-up or flow
 */
export function followUpNotes(setting: Setting, families: readonly OutcomeFamily[]): readonly string[] {
  return [followUpTimes(setting, families), ...families.map((family) => flowNote(setting, family))];
}

/** The visit, and for each family the median and range of follow-up, eyes and patients of each column. */
export function followUpTimes(setting: Setting, families: readonly OutcomeFamily[]): string {
  const visit = setting.words.tables.notes.visit(outcomeVisit(setting.plan, setting.words));
  return [visit, ...families.map((family) => followUpNote(setting, family))].join(' ');
}

function followUpNote({ results, words, columns }: Setting, family: OutcomeFamily): string {
  const { flow, notes } = words.tables;
  const measure = followUpMeasure(family);
  const told = columns.map(({ group, label }) => {
    const text = (statistic: string) => valueText(results.get(measure, group, statistic), words);
    const { n, patients } = results.get(measure, group, 'n');
    if (n === 0) return notes.followUpUnknown(label);
    return notes.followUpOf(label, text('median'), text('min'), text('max'), count(n), count(patients));
  });
  return notes.followUp(flow.names[family], told.join('; '));
}

/** Which eyes operated are not in a family, and why. */
export function flowNote({ results, words }: Setting, family: keyof Words['tables']['flow']['names']): string {
  const { flow, notes } = words.tables;
  const measure = `flow:${family}`;
  const operated = valueText(results.get(measure, 'all', 'operated'), words);
  const told = flowReasons(results, measure)
    .filter((row) => row.value !== 0)
    .map((row) => notes.countIn(reasonText(row.statistic, words), valueText(row, words)));
  const what = flow.names[family];
  return told.length === 0 ? notes.allAnalysed(operated, what) : notes.notAnalysed(operated, what, told.join('; '));
}

/** The reasons of a family's flow, all eyes, in their order: everything between operated and analysed. */
export function flowReasons(results: Results, measure: string): readonly ResultRow[] {
  const ends = new Set(['operated', 'analysed']);
  return results.rows.filter((row) => row.measure === measure && row.group === 'all' && !ends.has(row.statistic));
}

const excluded = 'excluded:';

/** Whether a reason concerns eligibility, and not the outcome of an eligible eye. */
export function isExclusion(statistic: string): boolean {
  return statistic.startsWith(excluded) || statistic === 'one_eye_rule';
}

/**
 * A reason in words; an exclusion bears the words of audit.yaml.
 *
 * @throws {RangeError} when the reason is not one that the flow of eyes knows
 */
export function reasonText(statistic: string, words: Words): string {
  if (statistic.startsWith(excluded)) return statistic.slice(excluded.length);
  const texts: Readonly<Record<string, string>> = words.tables.flow.reasons;
  const text = texts[statistic];
  if (text === undefined) throw new RangeError(`reasonText: "${statistic}" is no reason of the flow of eyes`);
  return text;
}
