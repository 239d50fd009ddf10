import { leftoverOf } from '../intake/leftover.js';
import { unwrapped } from '../intake/signs.js';
import { columnOf, type ExportedFile } from '../propose/exported.js';
import type { RecognisedFile } from '../propose/placed.js';
import { eyeKey } from './operations.js';
import { recordKey } from './record-number.js';

/** Patients of all files, numbered as they are first met. */
export interface People {
  /** Number of a patient; a new one is taken in. */
  numberOf(written: string): number;
  /** For each number, how it was first written. */
  written(): readonly string[];
}

/** Starts to number patients. */
export function people(): People {
  const numbers = new Map<string, number>();
  const first: string[] = [];
  return {
    numberOf(written) {
      const key = recordKey(written);
      const known = numbers.get(key);
      if (known !== undefined) return known;
      numbers.set(key, first.length);
      first.push(unwrapped(written));
      return first.length - 1;
    },
    written: () => first,
  };
}

/** Stands in place of a patient where a row names none. */
export const nobody = -1;

/**
 * Patient of every row of a file; `nobody` where the cell is blank, or a spreadsheet has made one number of several.
 */
export function patientsOfRows(file: ExportedFile, index: number, all: People): Int32Array {
  const { words, codes } = columnOf(file, index);
  const isNobody = (word: string): boolean =>
    file.isMissing(word) || recordKey(word) === '' || leftoverOf(word, 'word') !== undefined;
  const numbers = words.map((word) => (isNobody(word) ? nobody : all.numberOf(word)));
  return Int32Array.from(codes, (code) => numbers[code] as number);
}

/** The eye of every row, as `eyeKey` gives it; undefined where no column says which. */
export function eyesOfRows({ file, placed }: RecognisedFile): ((row: number) => string) | undefined {
  const index = placed.find(({ term }) => term === 'eye')?.index;
  if (index === undefined) return undefined;
  const { words, codes } = columnOf(file, index);
  const keys = words.map(eyeKey);
  return (row) => keys[codes[row] as number] as string;
}
