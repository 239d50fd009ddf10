import type { WordColumn } from '../../src/columns/word-column.js';
import type { FindingParts } from '../../src/findings/builder.js';
import { manyWords } from '../../src/findings/settling-lines.js';
import { missingWords } from '../../src/intake/missing.js';
import type { Finding } from '../../src/records/finding.js';
import type { TableRead } from './read-table.js';
import type { Wanted } from './wanted.js';

/** One use of a kept column, with the words that stand in it. */
export interface Used {
  header: string;
  /** The cell of the row of units; '' where there is none. */
  unit: string;
  wanted: Wanted;
  column: WordColumn;
  /** Distinct words that are not blank and do not say "missing". */
  words: readonly string[];
  /** Row at which a word first stands, as a spreadsheet shows it. */
  rowOf(word: string): number;
}

/** Every use of every kept column. */
export function usedColumns(table: TableRead, missing: readonly string[]): readonly Used[] {
  const isMissing = missingWords(missing);
  return table.layout.kept.flatMap((index, at) => {
    const column = table.columns[at] as WordColumn;
    const { words: all, codes } = column;
    const words = all.filter((word) => !isMissing(word));
    const [header, unit] = [table.header?.[index] ?? '', table.units[index] ?? ''];
    const rowOf = (word: string): number => table.rowNumber(codes.indexOf(all.indexOf(word)));
    return (table.layout.uses[at] ?? []).map((wanted) => ({ header, unit, wanted, column, words, rowOf }));
  });
}

/** Where an example stands; the judges give words of these columns alone. */
export function placeOf(columns: readonly Used[], example: string): Pick<Finding, 'row' | 'column' | 'field'> {
  const used = columns.find(({ words }) => words.includes(example));
  if (!used) throw new RangeError(`placeOf: an example stands in none of ${columns.length} columns`);
  return { row: used.rowOf(example), column: used.header, field: used.wanted.field };
}

/** A stop at the first example. */
export function stopAt(
  rule: string,
  columns: readonly Used[],
  [first = '', ...others]: readonly string[],
): FindingParts {
  const written = [first, ...others].join(manyWords);
  return { rule, severity: 'stop', effect: 'nothing published', ...placeOf(columns, first), written };
}

/** How many cells hold one of the words. */
export function cellsWith({ column: { words, codes } }: Used, wanted: readonly string[]): number {
  const asked = new Set(wanted);
  const counts = Uint8Array.from(words, (word) => (asked.has(word) ? 1 : 0));
  let cells = 0;
  for (const code of codes) cells += counts[code] as number;
  return cells;
}
