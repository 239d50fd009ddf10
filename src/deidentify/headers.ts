import { headerIdentifier } from '../intake/identifier-header.js';
import { valueIdentifier } from '../intake/identifiers.js';
import type { ExportedFile } from '../propose/exported.js';
import { readHeader } from '../propose/read-header.js';
import { isFullDate } from './harmless.js';
import type { KnownPersons } from './known-persons.js';

/** A header that may be shown: one that names a person, or is a date or number itself, is called by its place. */
export function shownHeader(header: string, index: number, persons: KnownPersons): string {
  const plain = header.replace(/\s+/g, ' ').trim();
  const tells =
    plain === '' ||
    /\d{5}/.test(plain) ||
    isFullDate(plain) ||
    valueIdentifier({ words: [plain], field: 'patient' }) !== undefined ||
    persons.isNamedIn(plain);
  return tells ? `column ${index + 1}` : plain;
}

/** What the row of groups above a header adds to it, in our own words: '1 month', 'right'. */
function groupWords(file: ExportedFile, index: number): readonly string[] {
  const [header = '', group = ''] = [file.header[index], file.groups[index]];
  if (group.trim() === '') return [];
  const alone = readHeader(header, '', undefined).context;
  const { visit, side } = readHeader(header, group, undefined).context;
  const added = [alone.visit ? undefined : visit?.name, alone.side ? undefined : side];
  return added.filter((word) => word !== undefined);
}

/**
 * The header of a column that is copied as it stands, with what the row of groups above it said; that row itself has no
 * copy. A header that the gate would stop at gives way to the column's place.
 */
export function writtenHeader(file: ExportedFile, index: number, persons: KnownPersons): string {
  const header = file.header[index] ?? '';
  const shown = headerIdentifier(header) ? `column ${index + 1}` : shownHeader(header, index, persons);
  return [...groupWords(file, index), shown].join(' ');
}

/**
 * Headers of our own and of the file, none twice but those that the file itself has twice in a copied column.
 *
 * @example distinctHeaders(['days', 'Axis', 'days']) // ['days', 'Axis', 'days 2']
 */
export function distinctHeaders(headers: readonly string[]): readonly string[] {
  const met = new Map<string, number>();
  return headers.map((header) => {
    const key = header.toLowerCase();
    const times = (met.get(key) ?? 0) + 1;
    met.set(key, times);
    return times > 1 && ours.has(key) ? `${header} ${times}` : header;
  });
}

/** Headers that we write; two columns of one of these names could not be told apart. */
const ours = new Set(['patient', 'surgery_year', 'surgery_order', 'days', 'exam_year', 'age', 'surgeon']);
