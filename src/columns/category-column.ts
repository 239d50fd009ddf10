import type { WordColumn } from './word-column.js';

/** Codes of a category column's cells: one byte a cell until it has more than 255 names. */
export type CategoryCodes = Uint8Array | Uint16Array;

/**
 * Few named values: `names[codes[row]]`. Code 0 = missing, and `names[0]` is the empty text that stands for it.
 * Serves as an arquero column.
 */
export interface CategoryColumn {
  readonly names: readonly string[];
  readonly codes: CategoryCodes;
  readonly length: number;
  at(row: number): string | undefined;
}

/** A category column while it is being filled, cell by cell. */
export interface CategoryColumnBuilder {
  readonly length: number;
  /** Undefined, or the empty text, is missing. */
  push(name: string | undefined): void;
  finish(): CategoryColumn;
}

/**
 * A column over names and codes that exist.
 *
 * @param names  distinct names; the first is the empty text, for missing
 * @param codes  for each row, an index into `names`
 * @throws {RangeError} when name 0 is not the empty text
 * @example categoryColumn(['', 'manual'], Uint8Array.of(1, 0)).at(1) // undefined
 */
export function categoryColumn(names: readonly string[], codes: CategoryCodes): CategoryColumn {
  if (names[0] !== '') throw new RangeError(`categoryColumn: name 0 is ‘${names[0]}’; expected the empty text`);
  return { names, codes, length: codes.length, at: (row) => (codes[row] ? names[codes[row]] : undefined) };
}

/**
 * Collects the named values of one column.
 *
 * @param names  names that get the first codes, in this order, whether or not they occur
 * @throws {RangeError} from `push`, when there are more than 65,535 names: such a column holds no categories
 * @example const builder = categoryColumnBuilder(['right', 'left']); builder.push('left'); // code 2
 */
export function categoryColumnBuilder(names: readonly string[] = []): CategoryColumnBuilder {
  const codeOf = new Map([...new Set(['', ...names])].map((name, code) => [name, code]));
  let codes: CategoryCodes = codeOf.size > 0x100 ? new Uint16Array(1024) : new Uint8Array(1024);
  let length = 0;
  return {
    get length() {
      return length;
    },
    push(name = '') {
      const code = codeOf.get(name) ?? codeOf.size;
      if (code > 0xffff) throw new RangeError('categoryColumnBuilder: 65,536 names; expected at most 65,535');
      if (code === codeOf.size) codeOf.set(name, code);
      if (code > 0xff && codes instanceof Uint8Array) codes = Uint16Array.from(codes);
      if (length === codes.length) codes = doubled(codes);
      codes[length] = code;
      length += 1;
    },
    finish: () => categoryColumn([...codeOf.keys()], codes.slice(0, length)),
  };
}

/**
 * Reads a column of text as categories, once a distinct word.
 *
 * @param column  text as written
 * @param parse   one word → its name; undefined where it is missing or in no list
 * @param names   names that get the first codes, in this order
 * @example mapCategories(column, (word) => (isMissing(word) ? undefined : word.trim()))
 */
export function mapCategories(
  column: WordColumn,
  parse: (word: string) => string | undefined,
  names: readonly string[] = [],
): CategoryColumn {
  const byWord = categoryColumnBuilder(names);
  for (const word of column.words) byWord.push(parse(word));
  const { names: known, codes: codeOfWord } = byWord.finish();
  const codes = codeOfWord instanceof Uint8Array ? new Uint8Array(column.length) : new Uint16Array(column.length);
  for (let row = 0; row < column.length; row += 1) codes[row] = codeOfWord[column.codes[row] as number] as number;
  return categoryColumn(known, codes);
}

function doubled(codes: CategoryCodes): CategoryCodes {
  const wider = codes instanceof Uint8Array ? new Uint8Array(codes.length * 2) : new Uint16Array(codes.length * 2);
  wider.set(codes);
  return wider;
}
