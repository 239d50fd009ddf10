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

/** Patients from which on a text is one of the clinic and not of a patient: two may be of one family. A judgement. */
const several = 3;

/** Texts of a column, folded, that stand with several patients. */
function sharedTexts(
  { words, codes }: WordColumn,
  patients: Int32Array,
  field: string | undefined,
): ReadonlySet<string> {
  const met = new Map<string, Set<number>>();
  const parts = words.map((word) => partsOf(word, field).map(folded));
  codes.forEach((code, row) => {
    const patient = patients[row] as number;
    if (patient < 0) return;
    for (const part of parts[code] as readonly string[]) {
      const found = met.get(part) ?? new Set();
      if (found.size < several) met.set(part, found.add(patient));
    }
  });
  return new Set([...met].filter(([, found]) => found.size >= several).map(([part]) => part));
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

/** Nobody was ever older; what is more, or less than nothing, is a slip of the pen and tells no age. */
const oldestPossible = 115;

/** Ages in whole years, 90 and more as one class; an impossible one stays, for the audit to find. */
function ages(file: ExportedFile, index: number): CopiedCells {
  return wordByWord(columnOf(file, index), (word) => {
    if (file.isMissing(word)) return word;
    const years = parseNumber(word.replace(/\s*\+$/, ''), { decimal: file.decimal, unit: 'years' });
    if (years === undefined) return removed;
    if (years >= 0 && years <= oldestPossible) return ageText(years);
    return isMeasurement(word, file.decimal, false) && Math.abs(years) < 1000 ? word : removed;
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
