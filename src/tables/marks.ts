import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import { fieldLabel } from './groups.js';

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

/** Notes that are read as what they say, in cells and labels, and need no mark. */
const silent = /^(primary|verdict):/;

/** What a note means to a reader; undefined where no words are found. */
function meaningOf(code: string, words: Words): string | undefined {
  const { collinear, marked } = words.tables.notes;
  const covariate = /^not-estimable:collinear:(.*)$/.exec(code)?.[1];
  if (covariate !== undefined) return collinear(fieldLabel(decodeURIComponent(covariate), words));
  const texts: Readonly<Record<string, string>> = marked;
  return texts[code];
}

/** The reason why a row has no value, in words; '' where it has one, or its note names none. */
export function reasonOf(row: ResultRow, words: Words): string {
  const code = noteCodes(row).find((note) => note.startsWith('not-estimable'));
  return code === undefined ? '' : (meaningOf(code, words) ?? '');
}

/**
 * The marks that the notes of the rows shown need.
 *
 * @throws {RangeError} when a note has no words: a footnote may not be lost
 */
export function marksOf(rows: readonly ResultRow[], words: Words): Marks {
  const { unmarked } = words.tables.notes;
  const bySymbol = new Map<string, string>();
  for (const code of rows.flatMap(noteCodes)) {
    if (code in unmarked || silent.test(code) || bySymbol.has(code)) continue;
    if (meaningOf(code, words) === undefined) {
      throw new RangeError(`marksOf: note "${code}" has no words in src/words/en/table-notes.ts`);
    }
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
  return [...marks.symbols].map(([code, symbol]) => `${symbol} ${meaningOf(code, words)}`);
}

/** *, †, ‡, §, ‖, ¶, #, then the same doubled, as tables are commonly marked. */
function symbolAt(index: number): string {
  const symbol = symbols[index % symbols.length] ?? '*';
  return symbol.repeat(1 + Math.floor(index / symbols.length));
}
