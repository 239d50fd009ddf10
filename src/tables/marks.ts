import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';

const symbols = ['*', '†', '‡', '§', '‖', '¶', '#'] as const;

/** Marks of one table, given out in the order in which the notes are met. */
export interface Marks {
  /** Note code → symbol. */
  symbols: ReadonlyMap<string, string>;
  /** The symbols that belong behind a cell made from these rows. */
  behind(rows: readonly ResultRow[]): string;
}

/** Codes of a row's note. */
export function noteCodes(row: ResultRow): readonly string[] {
  return row.note === '' ? [] : row.note.split(';');
}

/**
 * The marks that the notes of the rows shown need.
 *
 * @throws {RangeError} when a note has no words: a footnote may not be lost
 */
export function marksOf(rows: readonly ResultRow[], words: Words): Marks {
  const { marked, unmarked } = words.tables.notes;
  const bySymbol = new Map<string, string>();
  for (const code of rows.flatMap(noteCodes)) {
    if (code in unmarked || bySymbol.has(code)) continue;
    if (!(code in marked)) throw new RangeError(`marksOf: note "${code}" has no words in src/words/en/table-notes.ts`);
    bySymbol.set(code, symbolAt(bySymbol.size));
  }
  return {
    symbols: bySymbol,
    behind: (shown) => {
      const codes = new Set(shown.flatMap(noteCodes));
      return [...bySymbol].flatMap(([code, symbol]) => (codes.has(code) ? [symbol] : [])).join('');
    },
  };
}

/** One footnote a mark. */
export function markedNotes(marks: Marks, words: Words): readonly string[] {
  const texts: Readonly<Record<string, string>> = words.tables.notes.marked;
  return [...marks.symbols].map(([code, symbol]) => `${symbol} ${texts[code]}`);
}

/** *, †, ‡, §, ‖, ¶, #, then the same doubled, as tables are commonly marked. */
function symbolAt(index: number): string {
  const symbol = symbols[index % symbols.length] ?? '*';
  return symbol.repeat(1 + Math.floor(index / symbols.length));
}
