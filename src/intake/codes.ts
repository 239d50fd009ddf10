import { plainSigns } from './signs.js';

/** Words that say there is none; letter case and outer blanks do not matter. English, German, French. */
const noneWords = new Set([
  'none',
  'nil',
  'no',
  '0',
  'nothing',
  'uncomplicated',
  'keine',
  'kein',
  'nein',
  'aucune',
  'aucun',
  'non',
  'rien',
]);

/**
 * One or several codes in a cell, separated by `;` `,` or `+`.
 *
 * @returns the codes as written, without outer blanks; empty where the cell says that there is none
 * @source words in common practice, no source
 * @example parseCodes('PCR + VL') // ['PCR', 'VL']
 */
export function parseCodes(text: string): readonly string[] {
  return plainSigns(text)
    .split(/[;,+]/)
    .map((code) => code.trim())
    .filter((code) => code !== '' && !noneWords.has(code.toLowerCase()));
}

/**
 * Several codes as one text, in a fixed order; 'none' where there are none. Undone by `splitCodes`.
 *
 * @source definition; `parseCodes` leaves no '+' inside a code
 * @example joinedCodes(['VL', 'PCR']) // 'PCR+VL'
 */
export function joinedCodes(codes: readonly string[]): string {
  return codes.length === 0 ? 'none' : [...codes].sort().join('+');
}

/** The codes of a text made by `joinedCodes`; 'none' stands for itself. @example splitCodes('PCR+VL') // ['PCR', 'VL'] */
export function splitCodes(text: string): readonly string[] {
  return text.split('+');
}

/** Words for yes and no, in lower case. */
const yesWords = new Set(['yes', 'y', 'true', '1', 'x', 'ja', 'j', 'oui', 'o']);
const noWords = new Set(['no', 'n', 'false', '0', 'nein', 'non']);

/**
 * Yes or no as people write it.
 *
 * @returns undefined where the word says neither
 * @source words in common practice, no source
 * @example parseYesNo('Ja') // true
 */
export function parseYesNo(text: string): boolean | undefined {
  const word = plainSigns(text).toLowerCase();
  if (yesWords.has(word)) return true;
  return noWords.has(word) ? false : undefined;
}
