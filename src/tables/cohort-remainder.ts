import { count } from '../format/number.js';
import type { Draft, Setting } from './shapes.js';

/**
 * Says how many eyes of the audit belong to none of the cohorts that have a column, so that the columns add up.
 */
export function cohortRemainderNote({ head }: Draft, { results, columns, words }: Setting): readonly string[] {
  if (columns.length < 2 || head.length <= columns.length) return [];
  const eyesOf = (group: string): number => results.get('eyes_operated', group, 'count').n;
  const inCohorts = columns.reduce((sum, { group }) => (group === 'all' ? sum : sum + eyesOf(group)), 0);
  const rest = eyesOf('all') - inCohorts;
  return rest === 0 ? [] : [words.tables.notes.withoutCohort(count(rest), rest === 1)];
}
