import { columnOf } from '../propose/exported.js';
import type { RecognisedFile } from '../propose/placed.js';
import type { CopyColumn } from './dated-columns.js';

/** Names of surgeons in a column, as written. */
export function surgeonsIn({ file }: RecognisedFile, index: number): readonly string[] {
  return columnOf(file, index)
    .words.filter((word) => !file.isMissing(word))
    .map((word) => word.trim());
}

/** Surgeons by their codes. */
export function surgeonColumn(of: RecognisedFile, index: number, codeOf: (written: string) => string): CopyColumn {
  const { words, codes } = columnOf(of.file, index);
  const copies = words.map((word) => (of.file.isMissing(word) ? word : codeOf(word)));
  return {
    header: 'surgeon',
    cell: (row) => copies[codes[row] as number] as string,
    removed: 0,
    withoutSurgery: 0,
  };
}
