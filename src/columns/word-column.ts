/** Codes of a column's cells: two bytes a cell until it has more than 65,536 distinct words. */
export type WordCodes = Uint16Array | Uint32Array;

/**
 * Text cells of one column, each distinct text stored once: `words[codes[row]]`. Word 0 is the blank cell. What is
 * computed from a text is computed once a word, not once a cell. Serves as an arquero column.
 */
export interface WordColumn {
  readonly words: readonly string[];
  readonly codes: WordCodes;
  readonly length: number;
  at(row: number): string;
}

/** A word column while it is being read, cell by cell. */
export interface WordColumnBuilder {
  readonly length: number;
  /** The distinct cells so far, as they came; the first is the blank one. */
  words(): readonly string[];
  push(cell: string): void;
  finish(): WordColumn;
}

/**
 * A column over words and codes that exist.
 *
 * @param words  distinct texts; the first is the blank cell
 * @param codes  for each row, an index into `words`
 * @throws {RangeError} when word 0 is not the blank cell
 * @example wordColumn(['', 'OD'], Uint16Array.of(1, 0, 1)).at(0) // 'OD'
 */
export function wordColumn(words: readonly string[], codes: WordCodes): WordColumn {
  if (words[0] !== '') throw new RangeError(`wordColumn: word 0 is ‘${words[0]}’; expected the blank cell`);
  return { words, codes, length: codes.length, at: (row) => words[codes[row] as number] as string };
}

/** Codes while a column is being read: two bytes a cell until a code needs four. */
export interface CodeList {
  readonly length: number;
  push(code: number): void;
  finish(): WordCodes;
}

/** Starts a list of codes. */
export function codeList(): CodeList {
  let codes: WordCodes = new Uint16Array(1024);
  let length = 0;
  return {
    get length() {
      return length;
    },
    push(code) {
      if (code > 0xffff && codes instanceof Uint16Array) codes = Uint32Array.from(codes);
      if (length === codes.length) codes = doubled(codes);
      codes[length] = code;
      length += 1;
    },
    finish: () => codes.slice(0, length),
  };
}

/**
 * Collects the cells of one column and codes them by dictionary.
 *
 * @returns a builder; memory grows with distinct words, and by 2 or 4 bytes a cell
 * @example const builder = wordColumnBuilder(); builder.push('OD'); builder.finish().at(0) // 'OD'
 */
export function wordColumnBuilder(): WordColumnBuilder {
  const codeOf = new Map([['', 0]]);
  const codes = codeList();
  // Exports repeat themselves from row to row: the last cell is often the next one.
  let lastCell = '';
  let lastCode = 0;

  function push(cell: string): void {
    if (cell !== lastCell) {
      lastCell = cell;
      lastCode = codeOf.get(cell) ?? codeOf.size;
      if (lastCode === codeOf.size) codeOf.set(cell, lastCode);
    }
    codes.push(lastCode);
  }

  return {
    get length() {
      return codes.length;
    },
    words: () => [...codeOf.keys()],
    push,
    finish: () => wordColumn([...codeOf.keys()], codes.finish()),
  };
}

function doubled(codes: WordCodes): WordCodes {
  const wider = codes instanceof Uint16Array ? new Uint16Array(codes.length * 2) : new Uint32Array(codes.length * 2);
  wider.set(codes);
  return wider;
}
