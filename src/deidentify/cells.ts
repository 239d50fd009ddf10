import type { WordColumn } from '../columns/word-column.js';
import { parseCodes, parseYesNo } from '../intake/codes.js';
import { parseNumber } from '../intake/number.js';
import { columnOf, type ExportedFile } from '../propose/exported.js';
import { ageText } from './age.js';
import { holdsIdentifier, isLabel, isMeasurement, removed } from './harmless.js';
import type { KnownPersons } from './known-persons.js';
import type { Role } from './roles.js';

/** Cells of a copied column, and how many were taken out. */
export interface CopiedCells {
  cell(row: number): string;
  removed: number;
}

/** A column copied word by word; a word of which nothing may be said becomes `removed`. */
function wordByWord({ words, codes }: WordColumn, copyOf: (word: string) => string): CopiedCells {
  const copies = words.map(copyOf);
  const out = copies.map((copy, code) => (copy !== words[code] && copy.includes(removed) ? 1 : 0) as number);
  let count = 0;
  for (const code of codes) count += out[code] as number;
  return { cell: (row) => copies[codes[row] as number] as string, removed: count };
}

const folded = (text: string): string => text.trim().toLowerCase();

/** Parts of a cell that stand for themselves: each code of a list, or the whole label. */
const partsOf = (word: string, field: string | undefined): readonly string[] =>
  field === undefined ? [word] : parseCodes(word);

/** Texts of a column, folded, that stand with more than one patient. */
function sharedTexts(
  { words, codes }: WordColumn,
  patients: Int32Array,
  field: string | undefined,
): ReadonlySet<string> {
  const first = new Map<string, number>();
  const shared = new Set<string>();
  const parts = words.map((word) => partsOf(word, field).map(folded));
  codes.forEach((code, row) => {
    const patient = patients[row] as number;
    if (patient < 0) return;
    for (const part of parts[code] as readonly string[]) {
      if ((first.get(part) ?? patient) !== patient) shared.add(part);
      first.set(part, first.get(part) ?? patient);
    }
  });
  return shared;
}

/** Labels, or lists of codes of which each is looked at by itself. */
function labels(
  file: ExportedFile,
  index: number,
  { field, known }: Extract<Role, { kind: 'labels' }>,
  patients: Int32Array,
  persons: KnownPersons,
): CopiedCells {
  const column = columnOf(file, index);
  const shared = sharedTexts(column, patients, field);
  const isHarmless = (text: string): boolean => {
    if (shared.has(folded(text))) return isLabel(text, true, field);
    return (known || parseYesNo(text) !== undefined) && isLabel(text, false, field) && !persons.isNamedIn(text);
  };
  const copyOf = (text: string): string => (text.trim() === '' || isHarmless(text) ? text : removed);
  return wordByWord(column, (word) => {
    if (file.isMissing(word)) return word;
    return field === undefined ? copyOf(word) : word.replace(/[^;,+]+/g, copyOf);
  });
}

/** Ages in whole years, 90 and more as one class. */
function ages(file: ExportedFile, index: number): CopiedCells {
  return wordByWord(columnOf(file, index), (word) => {
    if (file.isMissing(word)) return word;
    const years = parseNumber(word.replace(/\s*\+$/, ''), { decimal: file.decimal, unit: 'years' });
    return years === undefined || years < 0 || years > 150 ? removed : ageText(years);
  });
}

/** What a column is copied as, word by word. */
export type CopiedRole = Extract<Role, { kind: 'numbers' | 'labels' | 'reviewed' | 'age' }>;

/** Cells of a column that is copied as it stands, but for what identifies. */
export function copiedCells(
  file: ExportedFile,
  index: number,
  role: CopiedRole,
  patients: Int32Array,
  persons: KnownPersons,
): CopiedCells {
  switch (role.kind) {
    case 'numbers':
      return wordByWord(columnOf(file, index), (word) =>
        file.isMissing(word) || isMeasurement(word, file.decimal, role.clock) ? word : removed,
      );
    case 'labels':
      return labels(file, index, role, patients, persons);
    case 'reviewed':
      return wordByWord(columnOf(file, index), (word) =>
        holdsIdentifier(word) || persons.isNamedIn(word) ? removed : word,
      );
    case 'age':
      return ages(file, index);
  }
}
