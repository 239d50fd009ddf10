import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { groupPairs, valueLabel } from './groups.js';
import type { Column } from './shapes.js';

/**
 * The groups that tables give a column: each cohort, the declared reference first, then all eyes; all eyes alone
 * where there is one cohort or none.
 */
export function cohortColumns(results: Results, plan: Plan, words: Words): readonly Column[] {
  const cohorts = results.rows
    .filter(
      (row) =>
        row.measure === 'eyes_operated' &&
        row.statistic === 'count' &&
        row.group !== 'all' &&
        row.note !== 'suppressed',
    )
    .map(({ group }) => ({ group, value: groupPairs(group)[0]?.[1] ?? '' }));
  const isReference = ({ value }: { value: string }) => value === plan.cohorts.reference;
  const ordered = [...cohorts.filter(isReference), ...cohorts.filter((cohort) => !isReference(cohort))];
  const columns = ordered.map(({ group, value }) => ({ group, label: valueLabel(value, words) }));
  return [...columns, { group: 'all', label: words.tables.allEyes }];
}
