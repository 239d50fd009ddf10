import { calendarFromDays } from './calendar.js';
import { dateInOrder, splitDate } from './date.js';
import { areNationalNumbers } from './national-number.js';
import { unwrapped } from './signs.js';

/** Which rule of the de-identification gate the cells of a column break; the cells themselves are never shown. */
export type ValueIdentifier =
  | 'value-email'
  | 'value-web-address'
  | 'value-phone'
  | 'value-person'
  | 'value-birth-date'
  | 'value-long-number'
  | 'value-national-number';

/** A column to be looked at. */
export interface ColumnWords {
  /** Distinct words, as written. */
  words: readonly string[];
  /** Our field, where the column is mapped. */
  field?: string | undefined;
}

const email = /[^\s@]+@[^\s@]+\.[a-z]{2,}/i;
const webAddress = /https?:\/\/|\bwww\.|^\d{1,3}(?:\.\d{1,3}){3}$/i;

/** With a country's number in front, or a leading zero and groups, or a group in brackets; never with a decimal. */
const phone =
  /^(?:\+|00)\d{1,3}[ /-]?(?:\(0\))?[ /-]?\d{1,5}(?:[ /-]?\d{2,8}){1,4}$|^\(?0\d{1,5}\)?[ /-]\d{2,8}(?:[ /-]?\d{2,8}){0,3}$|^\(\d{3}\) ?\d{3}-\d{4}$|^\d{3}-\d{3}-\d{4}$|^0\d{9,10}$/;
const socialSecurity = /^\d{3}-\d{2}-\d{4}$/;
const person = /^\p{Lu}[\p{L}'’-]+, ?\p{Lu}[\p{L}'’.-]*(?: \p{Lu}[\p{L}'’.-]*)*$/u;

/** Fields whose cells are lists of codes: 'Glaucoma, Uveitis' is not a person. */
const codeLists = new Set(['complication', 'comorbidity']);

/** Dates of an audit lie after this year; dates before it are birth dates. A judgement. */
const firstAuditYear = 1990;

/**
 * Whether the cells of a column identify persons: e-mail and web addresses, telephone numbers, national numbers with
 * their check digit, nine or more digits in a row in `patient`, `Surname, First`, and dates of birth.
 *
 * @returns the rule broken, never the value; undefined where the column breaks none
 * @source kinds of 45 CFR 164.514(b)(2); a net, not a guarantee
 * @example valueIdentifier({ words: ['', 'P0000001'], field: 'patient' }) // undefined
 */
export function valueIdentifier({ words, field }: ColumnWords): ValueIdentifier | undefined {
  const filled = words.map(unwrapped).filter((word) => word !== '');
  if (filled.some((word) => word.includes('@') && email.test(word))) return 'value-email';
  if (filled.some((word) => webAddress.test(word))) return 'value-web-address';
  if (field === 'patient' && filled.some((word) => /\d{9}/.test(word))) return 'value-long-number';
  if (filled.some((word) => socialSecurity.test(word)) || areNationalNumbers(filled)) return 'value-national-number';
  if (filled.some((word) => phone.test(word) && !splitDate(word))) return 'value-phone';
  if (arePersons(filled, field)) return 'value-person';
  return areBirthDates(filled, field) ? 'value-birth-date' : undefined;
}

/** One name is enough in `patient`; elsewhere most cells must look like one. */
function arePersons(words: readonly string[], field: string | undefined): boolean {
  if (field !== undefined && codeLists.has(field)) return false;
  const names = words.filter((word) => person.test(word)).length;
  return names > 0 && (field === 'patient' || 2 * names >= words.length);
}

/** Full dates where an age belongs, or a column of dates most of which lie before any audit. */
function areBirthDates(words: readonly string[], field: string | undefined): boolean {
  const years = words.flatMap((word) => {
    const date = splitDate(word);
    const days = date && (dateInOrder(date, 'day-first') ?? dateInOrder(date, 'month-first'));
    return days === undefined ? [] : [calendarFromDays(days).year];
  });
  if (years.length === 0) return false;
  return field === 'age' || 2 * years.filter((year) => year < firstAuditYear).length >= years.length;
}

/**
 * Whether the name of a file looks like that of a person, or holds one of the numbers above. Outputs then say 'file 2'.
 *
 * @param file  path or name, with '/'
 * @example fileNameIdentifier('exports/Surname, First.csv') // 'value-person'
 */
export function fileNameIdentifier(file: string): ValueIdentifier | undefined {
  const name = file.slice(file.lastIndexOf('/') + 1).replace(/\.[a-z]{2,4}$/i, '');
  return valueIdentifier({ words: [name], field: 'patient' });
}
