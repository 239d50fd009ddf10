import { type ByteWords, hashOf } from './byte-words.js';
import { codeList, type WordColumnBuilder, wordColumn } from './word-column.js';

/** A word column while it is being read by codes of a dictionary of bytes; it takes text too. */
export interface ByteColumnBuilder extends WordColumnBuilder {
  /** The next cell, as a code of the dictionary. */
  pushCode(code: number): void;
}

const encoder = new TextEncoder();

/**
 * Collects the cells of one column. Its words are those that were pushed, in their order: a dictionary also knows cells
 * of rows that were passed over.
 *
 * @param dictionary  knows the cells by their bytes; never cleared while the column is read
 * @example const column = byteColumnBuilder(byteWords()); column.push('OD'); column.finish().at(0) // 'OD'
 */
export function byteColumnBuilder(dictionary: ByteWords): ByteColumnBuilder {
  const words = [''];
  const codes = codeList();
  /** By code of the dictionary: one more than the column's own code; 0 while the word was not pushed. */
  let own = Int32Array.of(1);

  function pushCode(code: number): void {
    if (code >= own.length) {
      const wider = new Int32Array(2 * Math.max(code, own.length));
      wider.set(own);
      own = wider;
    }
    if (own[code] === 0) own[code] = words.push(dictionary.word(code));
    codes.push((own[code] as number) - 1);
  }

  return {
    get length() {
      return codes.length;
    },
    words: () => [...words],
    pushCode,
    push: (cell) => {
      const bytes = encoder.encode(cell);
      pushCode(dictionary.codeOf(bytes, 0, bytes.length, hashOf(bytes)));
    },
    finish: () => wordColumn(words, codes.finish()),
  };
}
