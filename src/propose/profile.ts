import type { WordColumn } from '../columns/word-column.js';
import { type DecimalMark, parseNumber, type WrittenUnit } from '../intake/number.js';
import { parseAxis, parseCylinder, parseSphere } from '../intake/refraction-field.js';

/** One distinct cell that is not blank and does not say "missing". */
export interface ProfileWord {
  word: string;
  cells: number;
  /** The number it writes, with or without a unit or a mark of an axis; NaN where it is none. */
  value: number;
}

/** What the cells of a column look like. */
export interface Profile {
  words: readonly ProfileWord[];
  /** Cells with a value. */
  filled: number;
  /** Cells without one. */
  blank: number;
  /** Share of the filled cells whose word passes; 0 where none is filled. */
  share(test: (one: ProfileWord) => boolean): number;
  /** Share of the filled cells that are numbers from `low` to `high`. */
  within(low: number, high: number): number;
  /** Number below which a share of the numbers lies, smallest first; NaN without numbers. */
  quantile(share: number): number;
}

const units: readonly WrittenUnit[] = ['mm', 'µm', 'D', 'deg', 'mmHg', 'm', 's', 'min', 'years', 'cells/mm²', '%'];

/**
 * The number that a cell writes, whatever its unit; NaN where it is none.
 *
 * @param word     one cell as written
 * @param decimal  the file's decimal mark
 * @example numberIn('x 90°', 'point') // 90
 */
export function numberIn(word: string, decimal: DecimalMark): number {
  const plain = word.replace(/(\d)\s*\+$/, '$1');
  const found = parseAxis(plain, decimal) ?? parseSphere(plain, decimal) ?? parseCylinder(plain, decimal);
  if (found !== undefined) return found;
  for (const unit of units) {
    const value = parseNumber(plain, { decimal, unit });
    if (value !== undefined) return value;
  }
  return Number.NaN;
}

/** Cells of each word of a column. */
function cellCounts({ words, codes }: WordColumn): Uint32Array {
  const counts = new Uint32Array(words.length);
  for (const code of codes) counts[code] = (counts[code] as number) + 1;
  return counts;
}

/** Looks at a column once, word by word. @param isMissing  whether a cell says that there is no value */
export function profileOf(column: WordColumn, decimal: DecimalMark, isMissing: (cell: string) => boolean): Profile {
  const counts = cellCounts(column);
  const words = column.words.flatMap((word, code): readonly ProfileWord[] => {
    const cells = counts[code] as number;
    return cells === 0 || isMissing(word) ? [] : [{ word, cells, value: numberIn(word, decimal) }];
  });
  const filled = words.reduce((sum, { cells }) => sum + cells, 0);
  const share = (test: (one: ProfileWord) => boolean): number =>
    filled === 0 ? 0 : words.reduce((sum, one) => sum + (test(one) ? one.cells : 0), 0) / filled;
  const ascending = words.filter(({ value }) => !Number.isNaN(value)).sort((a, b) => a.value - b.value);
  const numbers = ascending.reduce((sum, { cells }) => sum + cells, 0);
  return {
    words,
    filled,
    blank: column.length - filled,
    share,
    within: (low, high) => share(({ value }) => value >= low && value <= high),
    quantile(part) {
      let passed = 0;
      const found = ascending.find(({ cells }) => {
        passed += cells;
        return passed >= part * numbers;
      });
      return found?.value ?? Number.NaN;
    },
  };
}
