import { foldedText } from '../propose/header-words.js';
import { isTradeWord } from './trade-words.js';

/** Names and numbers that stand in the files' own columns of names and of patients' numbers. */
export interface KnownPersons {
  /** Whether a text holds a word of a name, or a number, of somebody in the files. */
  isNamedIn(text: string): boolean;
}

/** Shorter ones stand in other words' place too often: 'Li', '12'. */
const shortestName = 3;
const shortestNumber = 4;

/** Words as they are looked for: letters and digits of any script, folded. */
function partsOf(text: string): readonly string[] {
  return foldedText(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((part) => part !== '');
}

const year = /^(?:19|20)\d\d$/;

/** Whether a part of a name or number is worth looking for: no word of the trade, whoever bears it, and no year. */
function isTelling(part: string): boolean {
  if (/\d/.test(part)) return part.length >= shortestNumber && !year.test(part);
  return part.length >= shortestName && !isTradeWord(part);
}

/**
 * Gathers whom the files name, so that the same words are found where nobody looks for names: in the name of a file,
 * in a header, in a remark.
 *
 * @param cells  distinct cells of the columns that name persons
 * @example knownPersons(['Meier, Anna']).isNamedIn('told Mrs Meier') // true
 */
export function knownPersons(cells: Iterable<string>): KnownPersons {
  const parts = new Set<string>();
  for (const cell of cells) for (const part of partsOf(cell)) if (isTelling(part)) parts.add(part);
  return { isNamedIn: (text) => partsOf(text).some((part) => parts.has(part)) };
}
