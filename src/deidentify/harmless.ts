import { parseClock } from '../intake/clock.js';
import { parseYesNo } from '../intake/codes.js';
import { dateInOrder, splitDate } from '../intake/date.js';
import { valueIdentifier } from '../intake/identifiers.js';
import { isShortDate } from '../intake/leftover.js';
import type { DecimalMark } from '../intake/number.js';
import { isAcuity, isRefractionCell } from '../propose/looks.js';
import { numberIn } from '../propose/profile.js';
import { isTradeText } from './trade-words.js';

/** What stands where a cell was taken out. Never a blank: a blank may mean zero, or none. */
export const removed = 'removed';

const orders = ['day-first', 'month-first', 'year-first'] as const;

/** Whether a text is a full date in any order. */
export function isFullDate(text: string): boolean {
  const date = splitDate(text);
  return date !== undefined && orders.some((order) => dateInOrder(date, order) !== undefined);
}

const monthAndYear = /^(?:0?[1-9]|1[0-2])([./\- ])(?:19|20)\d\d$|^(?:19|20)\d\d([./\- ])(?:0?[1-9]|1[0-2])$/;
const dayAndMonth = /^(?:0?[1-9]|[12]\d|3[01])\. ?(?:0?[1-9]|1[0-2])\.$/;

/**
 * Whether a text is a month of a year, or a day of a month. 5.2024 may be a number too: a column must be full of them.
 *
 * @example isPartOfDate('05/2024') // true
 */
export function isPartOfDate(text: string): boolean {
  const plain = text.trim();
  return monthAndYear.test(plain) || dayAndMonth.test(plain) || isShortDate(plain);
}

/** Five digits that are no decimals: a record's number, or a date as a spreadsheet counts days. */
const longNumber = /(?<!\d)(?<!\d[.,])\d{5}/;

/** Whether a whole cell is an identifier by itself. @param field  whose cells may be lists of codes */
function isIdentifier(word: string, field?: string): boolean {
  if (isPartOfDate(word)) return true;
  return longNumber.test(word) || isFullDate(word) || valueIdentifier({ words: [word], field }) !== undefined;
}

/** Signs and few digits: not a word, not a telephone number. */
const figures = /^[\s\d.,/+\-\u2212()<>=~±%°]*$/;
const mostFigures = 6;

/** Whether a number is as small as measurements are; its decimals may be many, where a spreadsheet worked it out. */
function isSmall(word: string): boolean {
  const [whole = ''] = /\d+/.exec(word) ?? [];
  return whole.length <= 3 || (whole.length === 4 && !whole.startsWith('0'));
}

/** A refraction in one cell. Telephone numbers and dates look like one where nobody looks at their digits. */
function isPlainRefraction(word: string, decimal: DecimalMark): boolean {
  return isRefractionCell(word, decimal) && !/\d{4}|(?<!\d)0\d\d/.test(word) && !isFullDate(word);
}

/**
 * Whether a cell of a measurement may leave the clinic: a number, an acuity, a refraction, or a few figures. What else
 * people write there is not read by an audit either.
 *
 * @param clock  whether it may be an hour on a dial
 * @example isMeasurement('see Mrs Meier', 'point', false) // false
 */
export function isMeasurement(word: string, decimal: DecimalMark, clock: boolean): boolean {
  if (isPlainRefraction(word, decimal)) return true;
  if (!Number.isNaN(numberIn(word, decimal))) return isSmall(word);
  if (isIdentifier(word)) return false;
  if (isAcuity(word, decimal) || (clock && parseClock(word) !== undefined)) return true;
  return figures.test(word) && word.replace(/\D/g, '').length <= mostFigures;
}

/** A word of few letters, or of letters and digits: the shape of codes. */
const code = /^(?:\p{Lu}{1,5}|\p{L}{1,3}|(?=[\p{L}\d+./_-]*\d)[\p{L}\d+./_-]{1,12})\.?$/u;

/** Whether a text has the shape of a code. @example isCodeLike('A1T') // true */
export function isCodeLike(text: string): boolean {
  return code.test(text.trim()) && !isIdentifier(text);
}

/** Words that stand before a name. English, German, French. @source words in common practice, no source */
const titles =
  /(?:^|[^\p{L}])(?:M(?:rs?|s|iss|me|lle|adame|onsieur)|mrs?|Dr|Prof|Sir|Frau|Herrn?|frau|herrn?)\.?\s+\p{Lu}\p{Ll}/u;

const longestLabel = 40;

/**
 * Whether a label may leave the clinic: a code, words of the trade, yes or no, or a short text that several patients
 * share. A remark about one patient is none of these.
 *
 * @param shared  whether it stands with several patients
 * @param field   whose cells may be lists of codes
 */
export function isLabel(text: string, shared: boolean, field?: string): boolean {
  const plain = text.trim();
  if (plain === '') return true;
  if (plain.length > longestLabel || isIdentifier(plain, field) || titles.test(plain)) return false;
  return shared || isCodeLike(plain) || isTradeText(plain) || parseYesNo(plain) !== undefined;
}

/** Enough digits with what stands between them in telephone and insurance numbers. */
const longFigures = /\d(?:[ ()/.-]{0,2}\d){6,}/;

/** Dates inside a text: any one, two or three words that are one. */
function holdsDate(text: string): boolean {
  const parts = text.split(/[\s;:()[\]"]+/).map((part) => part.replace(/^[,.]+|[,.]+$/g, ''));
  return parts.some((_, at) => [1, 2, 3].some((length) => isFullDate(parts.slice(at, at + length).join(' '))));
}

/**
 * Whether a reviewed text still holds what the gate would stop at, anywhere inside it: an address, a long number, a
 * date, a title with a name behind it.
 *
 * @example holdsIdentifier('rang on 3.4.2025') // true
 */
export function holdsIdentifier(text: string): boolean {
  const parts = text.split(/\s+/);
  return (
    isIdentifier(text.trim()) ||
    parts.some((part) => valueIdentifier({ words: [part.replace(/[,.;:]+$/, '')] }) !== undefined) ||
    longNumber.test(text) ||
    longFigures.test(text) ||
    titles.test(text) ||
    holdsDate(text)
  );
}
