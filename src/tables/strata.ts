import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { groupPairs, valueLabel } from './groups.js';
import type { Column } from './shapes.js';

/** The groups of one stratum that hold eyes with a measure, in their order, named as readers see them. */
export function strataColumns(results: Results, measure: string, field: string, words: Words): readonly Column[] {
  const labels: Readonly<Record<string, string>> = words.tables.astigmatism.strata;
  return results.rows
    .filter(({ statistic, ...row }) => row.measure === measure && statistic === 'n' && (row.value ?? 0) > 0)
    .flatMap(({ group }) => {
      const pairs = groupPairs(group);
      const [pair] = pairs;
      if (pairs.length !== 1 || pair?.[0] !== field) return [];
      return [{ group, label: labels[pair[1]] ?? valueLabel(pair[1], words) }];
    });
}
