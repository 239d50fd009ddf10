import type { Plan } from '../../src/records/plan.js';
import { labelledBefore } from '../../src/visits/visit-rule.js';

const folded = (word: string): string => word.trim().toLowerCase().replace(/\s+/g, ' ');

/**
 * What a visit word means: 1-based declared visit, −1 before surgery, 0 no visit of this audit.
 *
 * @param plan  visits by name and by their labels
 */
export function visitLabels(plan: Plan): (word: string) => number {
  const { visits, before } = plan.follow_up;
  const known = new Map<string, number>([['before', labelledBefore]]);
  for (const label of before.labels) known.set(folded(label), labelledBefore);
  visits.forEach((visit, i) => {
    for (const label of [visit.name, ...visit.labels]) known.set(folded(label), i + 1);
  });
  return (word) => known.get(folded(word)) ?? 0;
}
