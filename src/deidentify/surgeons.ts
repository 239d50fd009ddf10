import { columnOf } from '../propose/exported.js';
import type { RecognisedFile } from '../propose/placed.js';
import type { CopyColumn } from './dated-columns.js';

/** A surgeon who is called by a number already. */
const number = /^\p{L}{0,2}\d{1,3}$|^\p{L}$/u;

/** Whether a column calls surgeons by codes; names and initials are turned into codes. */
export function areSurgeonCodes({ file }: RecognisedFile, index: number): boolean {
  return columnOf(file, index).words.every((word) => file.isMissing(word) || number.test(word.trim()));
}

/** Names of surgeons that need a code, as written. */
export function surgeonsIn(of: RecognisedFile, index: number): readonly string[] {
  if (areSurgeonCodes(of, index)) return [];
  return columnOf(of.file, index)
    .words.filter((word) => !of.file.isMissing(word))
    .map((word) => word.trim());
}

/** Surgeons by their codes. @param header  as it stands, where the column may stay as it is */
export function surgeonColumn(
  of: RecognisedFile,
  index: number,
  header: string,
  codeOf: (written: string) => string,
): CopyColumn {
  const { words, codes } = columnOf(of.file, index);
  const isCoded = areSurgeonCodes(of, index);
  const copies = words.map((word) => (isCoded || of.file.isMissing(word) ? word : codeOf(word)));
  return {
    header: isCoded ? header : 'surgeon',
    cell: (row) => copies[codes[row] as number] as string,
    removed: 0,
    withoutSurgery: 0,
  };
}
