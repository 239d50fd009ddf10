import { valueIdentifier } from '../intake/identifiers.js';
import { recordKey } from './record-number.js';

/** Whom a code stands for. */
export type CodeKind = 'patient' | 'surgeon';

/** One line of the book. */
export interface CodeEntry {
  kind: CodeKind;
  code: string;
  /** The number or name as it stood in the export. */
  written: string;
}

/** Codes, and whom they stand for. It is the one thing that leads back to a patient. */
export interface CodeBook {
  /** A random name of the book, by which copies made with it are known. */
  id: string;
  entries: readonly CodeEntry[];
}

/** A random whole number from 0 to below a limit, from the cryptographic generator of the edge. */
export type Draw = (below: number) => number;

/** A line that a book cannot have; what stands in it is never told. */
export interface BookFault {
  fault: 'header' | 'kind' | 'code' | 'twice' | 'blank' | 'id' | 'quote';
  /** As a spreadsheet shows it. */
  row: number;
}

const columns = ['kind', 'code', 'written'] as const;

/** Digits and capitals without vowels and look-alikes: no word, no date and no number comes of them by chance. */
const signs = '23456789BCDFGHJKMNPQRSTVWXYZ';
const shapes: Readonly<Record<CodeKind | 'book', { start: string; length: number }>> = {
  book: { start: 'B', length: 11 },
  patient: { start: 'P', length: 7 },
  surgeon: { start: 'S', length: 4 },
};

function newCode(kind: CodeKind | 'book', draw: Draw): string {
  const { start, length } = shapes[kind];
  return start + Array.from({ length }, () => signs[draw(signs.length)] as string).join('');
}

const keyOf = (kind: CodeKind, written: string): string => `${kind} ${recordKey(written)}`;

/** Whether a code may stand in a copy: short, plain, and nothing that the gate would stop at. */
function isCode(code: string, written: string): boolean {
  const isPlain = /^[A-Za-z0-9_-]{1,24}$/.test(code);
  return isPlain && code !== recordKey(written) && valueIdentifier({ words: [code], field: 'patient' }) === undefined;
}

/** A book without a patient. */
export function newCodeBook(draw: Draw): CodeBook {
  return { id: newCode('book', draw), entries: [] };
}

/** Code of everybody in the book. @returns undefined for one whom the book does not know */
export function codesOf(book: CodeBook): (kind: CodeKind, written: string) => string | undefined {
  const codes = new Map(book.entries.map(({ kind, written, code }) => [keyOf(kind, written), code]));
  return (kind, written) => codes.get(keyOf(kind, written));
}

/**
 * The book with everybody who was not in it, each with a new random code. Those who were keep theirs, so that a book
 * gives the same codes next year. No code is derived from what it stands for.
 *
 * @param wanted  numbers and names as written, in any order, repeats included
 * @source 45 CFR 164.514(c): a code may not be derived from information about the individual
 */
export function extendedBook(book: CodeBook, wanted: readonly Omit<CodeEntry, 'code'>[], draw: Draw): CodeBook {
  const known = new Set(book.entries.map(({ kind, written }) => keyOf(kind, written)));
  const taken = new Set(book.entries.map(({ code }) => code));
  const added: CodeEntry[] = [];
  for (const { kind, written } of wanted) {
    if (known.has(keyOf(kind, written))) continue;
    known.add(keyOf(kind, written));
    let code = newCode(kind, draw);
    while (taken.has(code)) code = newCode(kind, draw);
    taken.add(code);
    added.push({ kind, code, written });
  }
  return { id: book.id, entries: [...book.entries, ...added] };
}

/** The lines of a book, its header first. */
export function bookRows({ id, entries }: CodeBook): readonly (readonly string[])[] {
  return [columns, ['book', id, ''], ...entries.map(({ kind, code, written }) => [kind, code, written])];
}

/** Reads the lines of a book as `bookRows` made them; a spreadsheet may have saved them since. */
export function readCodeBook(rows: readonly (readonly string[])[]): CodeBook | BookFault {
  const [header = [], ...lines] = rows;
  if (columns.some((name, at) => header[at]?.trim().toLowerCase() !== name)) return { fault: 'header', row: 1 };
  const entries: CodeEntry[] = [];
  const met = new Set<string>();
  let id = '';
  for (const [at, line] of lines.entries()) {
    const [kind = '', code = '', written = ''] = line.map((cell) => cell.trim());
    const row = at + 2;
    if (line.every((cell) => cell.trim() === '')) continue;
    if (kind === 'book' && id === '') {
      id = code;
      continue;
    }
    const fault = faultOf(kind, code, written, met);
    if (fault) return { fault, row };
    met.add(code).add(keyOf(kind as CodeKind, written));
    entries.push({ kind: kind as CodeKind, code, written });
  }
  return /^B[0-9A-Z]{11}$/.test(id) ? { id, entries } : { fault: 'id', row: 2 };
}

function faultOf(
  kind: string,
  code: string,
  written: string,
  met: ReadonlySet<string>,
): BookFault['fault'] | undefined {
  if (kind !== 'patient' && kind !== 'surgeon') return 'kind';
  if (recordKey(written) === '') return 'blank';
  if (!isCode(code, written)) return 'code';
  return met.has(code) || met.has(keyOf(kind, written)) ? 'twice' : undefined;
}
