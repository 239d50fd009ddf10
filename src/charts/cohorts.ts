import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import { cohortColumns } from '../tables/cohorts.js';
import { groupPairs } from '../tables/groups.js';
import type { Column } from '../tables/shapes.js';
import type { Words } from '../words/index.js';
import { type Accent, accents } from './theme.js';

/** One group of eyes and how it is drawn. */
export interface Cohort {
  /** Of results rows: 'all', or 'technique=manual'. */
  group: string;
  /** As the points name it; undefined: every point. */
  name: string | undefined;
  /** As readers see it. */
  label: string;
  accent: Accent;
}

/**
 * The groups that charts tell apart, in the order of the tables; all eyes alone where there are fewer than two cohorts,
 * or more than there are accents: five curves in one picture are told apart by nobody, and the tables have them all.
 */
export function chartCohorts(results: Results, plan: Plan, words: Words): readonly Cohort[] {
  const columns = cohortColumns(results, plan, words);
  const groups = columns.filter(({ group }) => group !== 'all');
  if (groups.length < 2 || hasTooManyCohorts(columns)) return [allEyes(words)];
  return groups.map(({ group, label }, index) => {
    return { group, label, name: groupPairs(group)[0]?.[1], accent: accents[index] as Accent };
  });
}

/**
 * The cohorts of these names, each drawn as it is among all; 'all' is every eye as one group.
 *
 * @returns the names that are there instead, where one asked for is not
 */
export function namedCohorts(
  names: readonly string[],
  cohorts: readonly Cohort[],
  words: Words,
): { cohorts: readonly Cohort[] } | { known: readonly string[] } {
  const known = new Map(cohorts.flatMap((cohort) => (cohort.name === undefined ? [] : [[cohort.name, cohort]])));
  const found = names.map((name) => (name === 'all' ? allEyes(words) : known.get(name)));
  const cohortsFound = found.filter((cohort) => cohort !== undefined);
  return cohortsFound.length === names.length ? { cohorts: cohortsFound } : { known: [...known.keys(), 'all'] };
}

/** Whether these columns, one a cohort and one for all eyes, are more than charts tell apart. */
export function hasTooManyCohorts(columns: readonly Column[]): boolean {
  return columns.length - 1 > accents.length;
}

/** Every eye, as one group. */
export function allEyes(words: Words): Cohort {
  return { group: 'all', name: undefined, label: words.tables.allEyes, accent: accents[0] as Accent };
}
