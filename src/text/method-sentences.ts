import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import { hasInterval } from '../tables/footnotes.js';
import type { Cited } from '../words/en/methods-text.js';
import type { Words } from '../words/index.js';

const isComparison = ({ group }: ResultRow): boolean => group.includes(' vs ');

/** Rows of one group of eyes. */
export function ofOneGroup({ rows }: Results): readonly ResultRow[] {
  return rows.filter((row) => !isComparison(row));
}

/** Rows that compare two cohorts, all of their eyes. */
export function ofComparisons({ rows }: Results): readonly ResultRow[] {
  return rows.filter((row) => isComparison(row) && !row.group.includes('sensitivity='));
}

/**
 * One sentence for each method that the intervals of some rows bear, in the order of the words.
 *
 * @throws {RangeError} when a method has no words
 */
export function methodSentences(rows: readonly ResultRow[], words: Words): readonly Cited[] {
  const { byMethod } = words.tables.methods;
  // The bound under independence is no interval of the audit: footnotes tell it as what it is not.
  const told = rows.filter((row) => hasInterval(row) && row.method !== 'independent-eyes');
  const used = new Set(told.map(({ method }) => method));
  for (const method of used) {
    if (!(method in byMethod)) throw new RangeError(`methods: method "${method}" has no words in methods-text.ts`);
  }
  return Object.entries(byMethod).flatMap(([method, sentence]) => (used.has(method) ? [sentence] : []));
}
