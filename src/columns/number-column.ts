import type { WordCodes, WordColumn } from './word-column.js';

/**
 * Numbers of one column, one value a word: `values[codes[row]]`. NaN = missing, or not a number. Serves as an
 * arquero column.
 */
export interface NumberColumn {
  readonly values: Float64Array;
  readonly codes: WordCodes;
  readonly length: number;
  at(row: number): number;
}

/**
 * A column over values and codes that exist; nothing is copied.
 *
 * @param values  one value a word
 * @param codes   for each row, an index into `values`
 * @example numberColumn(Float64Array.of(Number.NaN, 1.25), Uint16Array.of(1, 0)).at(0) // 1.25
 */
export function numberColumn(values: Float64Array, codes: WordCodes): NumberColumn {
  return { values, codes, length: codes.length, at: (row) => values[codes[row] as number] as number };
}

/**
 * Reads a column of text as numbers, once a distinct word. The codes are shared with the words.
 *
 * @param column  text as written
 * @param parse   one word → its number, NaN where there is none; asked about the blank cell too, since a source may
 *                declare what a blank means
 * @example mapWords(column, (word) => parseNumber(word, { decimal: 'comma' }) ?? Number.NaN)
 */
export function mapWords(column: WordColumn, parse: (word: string) => number): NumberColumn {
  return numberColumn(
    Float64Array.from(column.words, (word) => parse(word)),
    column.codes,
  );
}
