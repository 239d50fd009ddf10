import { count } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import type { Draft, Setting } from './shapes.js';
import { intervalText } from './value-text.js';

/**
 * For shares of exactly 0 or 100 %, whose interval counts patients: what the limits would be if all eyes were
 * independent, once for each number of eyes.
 */
export function independentNote({ rows }: Draft, { results, words }: Setting): readonly string[] {
  const shown = rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.rows));
  const bounds = shown.flatMap((row) => results.find(row.measure, row.group, `independent:${row.statistic}`) ?? []);
  const told = new Map<string, string>();
  for (const bound of bounds) told.set(`${bound.value} ${bound.n} ${bound.ci_low}`, boundText(bound, words));
  return told.size === 0 ? [] : [words.tables.notes.independent([...new Set(told.values())].join('; '))];
}

function boundText(bound: ResultRow, words: Setting['words']): string {
  const limits = intervalText({ ...bound, statistic: 'share' }, words) ?? '';
  return words.tables.notes.independentOf(count(bound.n), limits);
}
