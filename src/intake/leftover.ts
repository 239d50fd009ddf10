import { splitDate } from './date.js';
import { plainSigns } from './signs.js';

/**
 * What a spreadsheet puts in the place of what was typed:
 *
 * date      06-Sep for 6/9, 01. Mai for 1.5
 * exponent  1E+05 for a long number
 * error     #REF!, #DIV/0!: a formula that failed
 * narrow    ####: a column too narrow for its number
 * grouped   2,350 or 2 350: thousands are marked
 * serial    45678 for a day: the count of days that spreadsheets keep
 */
export const leftovers = ['date', 'exponent', 'error', 'narrow', 'grouped', 'serial'] as const;

export type Leftover = (typeof leftovers)[number];

const month = '(?:jan|f[eé][bv]|m[aä][rei]|mrz|a[pv]r|may|ju[nil]|ao[uû]|aug|sep|o[ck]t|nov|d[eé][cz])[a-zéûä]*';
const monthAndNumber = new RegExp(String.raw`^(?:\d{1,2}[-./ ]*${month}\.?|${month}[-./ ]*\d{1,4})$`, 'i');
const exponent = /^[+-]?\d+(?:[.,]\d+)?e[+-]?\d+$/i;
/** As spreadsheets write it. A code such as 2E5 is a code. */
const codeWithExponent = /^\d(?:[.,]\d+)?E[+-]\d{2,}$/;
const error = /^(?:#\p{L}+(?:\/[\p{L}0])?[!?]?|err:\d+)$/iu;
const grouped = /^[+-]?\d{1,3}(?:([ '’.,])\d{3})(?:\1\d{3})*(?:[.,]\d+)?$/;
const count = /^\d{5}(?:[.,]\d+)?$/;

/** Days from the first day of 1900 as spreadsheets count them to 1940-01-01 and to 2100-01-01. */
const serials = [14_611, 73_051] as const;

/**
 * Whether a text is a date of which only day and month, or month and year, are left: `06-Sep`, `Sep-06`, `01. Mai`.
 *
 * @param text  one cell as written
 * @source how spreadsheets show 6/9 or 1.5 typed into a cell: common practice, no source
 * @example isShortDate('06-Sep') // true
 */
export function isShortDate(text: string): boolean {
  return monthAndNumber.test(plainSigns(text));
}

/**
 * What a spreadsheet has made of a cell that cannot be read as what it should be.
 *
 * @param text  one cell as written, already found not to be a number, a date or a code
 * @param as    what stands in the column: numbers (acuities and refractions among them), dates, or words and codes
 * @returns undefined where nothing points to a spreadsheet
 * @source how spreadsheets show failed formulas, long numbers and days: common practice, no source
 * @example leftoverOf('06-Sep', 'number') // 'date'
 */
export function leftoverOf(text: string, as: 'number' | 'date' | 'word'): Leftover | undefined {
  const plain = plainSigns(text);
  if (error.test(plain)) return 'error';
  if (/^#{2,}$/.test(plain)) return 'narrow';
  if (as === 'word') return codeWithExponent.test(plain) ? 'exponent' : undefined;
  if (exponent.test(plain)) return 'exponent';
  if (as === 'date') return isSerial(plain) ? 'serial' : undefined;
  if (isShortDate(plain) || splitDate(plain)) return 'date';
  return grouped.test(plain) ? 'grouped' : undefined;
}

function isSerial(plain: string): boolean {
  const days = Number(plain.replace(',', '.'));
  return count.test(plain) && days >= serials[0] && days < serials[1];
}
