import { logMAROfDecimal, logMAROfFraction, logMAROfLetters } from '../acuity/log-mar.js';
import { type LowVision, type LowVisionTable, lowVisionOf } from '../acuity/low-vision.js';
import type { LogMAR } from '../units.js';
import { splitDate } from './date.js';
import { isShortDate } from './leftover.js';
import { type DecimalMark, parseNumber } from './number.js';
import { plainSigns } from './signs.js';

/** What a bare number in an acuity column counts. */
export type AcuityNumbers = 'decimal' | 'logmar' | 'letters';

/** How the acuities of one column are written. */
export interface AcuityForm {
  decimal: DecimalMark;
  /** Needed for bare numbers only: fractions and low-vision words explain themselves. */
  numbers?: AcuityNumbers | undefined;
  /** Declared only where a suffix counts letters of a chart with five a line. */
  lettersPerLine?: 5 | undefined;
  /** The logMAR that stands for each low-vision word. */
  lowVision: LowVisionTable;
}

export interface WrittenAcuity {
  /** Exactly what was recorded, not moved to a line; for a low-vision word the table's value. */
  logMAR: LogMAR;
  /** Set where the value is the table's: never a change or an index, and only some enter means. */
  lowVision?: LowVision;
  /** What stood behind the acuity ('-2', '+1', 'p'), whether or not it was counted. */
  suffix?: string;
}

/**
 * not-an-acuity      the text is none
 * scale-needed       a bare number, and nobody said whether it is decimal, logMAR or letters
 * date-like          06-Sep, 6-9 or 06/09/2025: a spreadsheet has turned a fraction into a date
 * zero               a decimal or a fraction of zero: not measured, or a word is missing
 */
export type AcuityRefusal = { reason: 'not-an-acuity' | 'scale-needed' | 'date-like' | 'zero' };

const suffixShape = String.raw`(?: ?\(?(?<suffix>[+-] ?[1-5]?|p{1,2}|part\.?|partly|teilw\.?)\)?)?`;
const size = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const fraction = new RegExp(`^(?<numerator>${size}) ?/ ?(?<denominator>${size})${suffixShape}$`, 'i');
const bare = new RegExp(`^(?<number>[+-]?${size})(?: ?(?<unit>logmar|letters?|dec(?:imal)?))?$`, 'i');
const bareWithSuffix = new RegExp(`^(?<number>${size})${suffixShape}$`, 'i');
/** 6-9: a fraction whose stroke became that of a date. */
const stroke = /^\d{1,2}-\d{1,2}$/;

/**
 * An acuity as people write it: `6/9`, `20/40-2`, `6/7,5`, `CF 1m`, or a bare number of a declared scale.
 *
 * A suffix of letters counts 0.02 each where the source declares five letters a line; otherwise the line is used and
 * the suffix is kept as text. Whether the value is possible (−0.31 to 3.01) is a quality rule.
 *
 * @param text  one cell as written
 * @param form  how this column is written
 * @returns the acuity, or the reason why there is none
 * @source 5 letters a line: Gregori NZ, Feuer W, Rosenfeld PJ. Retina 2010;30; spellings in common practice, no source
 * @example parseAcuity('20/40', { decimal: 'point', lowVision: defaultLowVision }) // { logMAR: 0.301 }
 */
export function parseAcuity(text: string, form: AcuityForm): WrittenAcuity | AcuityRefusal {
  const plain = plainSigns(text);
  const lowVision = lowVisionOf(plain);
  if (lowVision) return { logMAR: form.lowVision[lowVision], lowVision };
  const parts = fraction.exec(plain)?.groups;
  if (parts) return ofFraction(parts.numerator ?? '', parts.denominator ?? '', parts.suffix, form);
  return ofBareNumber(plain, form);
}

function ofFraction(
  numerator: string,
  denominator: string,
  suffix: string | undefined,
  form: AcuityForm,
): WrittenAcuity | AcuityRefusal {
  const above = parseNumber(numerator, { decimal: form.decimal });
  const below = parseNumber(denominator, { decimal: form.decimal });
  // Charts are read at 20 feet or 6 metres at most; a larger numerator is a slip or another quantity.
  if (above === undefined || below === undefined || above > 20) return { reason: 'not-an-acuity' };
  if (above === 0 || below === 0) return { reason: 'zero' };
  return withSuffix(logMAROfFraction(above, below), suffix, form);
}

function ofBareNumber(plain: string, form: AcuityForm): WrittenAcuity | AcuityRefusal {
  const { number, unit } = bare.exec(plain)?.groups ?? {};
  const scale = unit === undefined ? form.numbers : scaleOfUnit(unit);
  if (number === undefined) return ofSuffixedDecimal(plain, form);
  if (scale === undefined) return { reason: 'scale-needed' };
  const value = parseNumber(number, { decimal: form.decimal });
  if (value === undefined) return { reason: 'not-an-acuity' };
  if (scale === 'logmar') return { logMAR: value };
  if (scale === 'letters')
    return Number.isInteger(value) ? { logMAR: logMAROfLetters(value) } : { reason: 'not-an-acuity' };
  if (value === 0) return { reason: 'zero' };
  return value < 0 ? { reason: 'not-an-acuity' } : { logMAR: logMAROfDecimal(value) };
}

function ofSuffixedDecimal(plain: string, form: AcuityForm): WrittenAcuity | AcuityRefusal {
  if (isShortDate(plain) || stroke.test(plain) || splitDate(plain)) return { reason: 'date-like' };
  const { number, suffix } = bareWithSuffix.exec(plain)?.groups ?? {};
  if (number === undefined) return { reason: 'not-an-acuity' };
  if (form.numbers === undefined) return { reason: 'scale-needed' };
  const value = parseNumber(number, { decimal: form.decimal });
  if (form.numbers !== 'decimal' || value === undefined) return { reason: 'not-an-acuity' };
  return value === 0 ? { reason: 'zero' } : withSuffix(logMAROfDecimal(value), suffix, form);
}

function scaleOfUnit(unit: string): AcuityNumbers {
  if (/^log/i.test(unit)) return 'logmar';
  return /^let/i.test(unit) ? 'letters' : 'decimal';
}

/** Letters missed (−) make the acuity worse, letters read of the next line (+) better. */
function withSuffix(line: LogMAR, suffix: string | undefined, form: AcuityForm): WrittenAcuity {
  if (suffix === undefined) return { logMAR: line };
  const letters = /^[+-] ?[1-5]$/.test(suffix) ? Number(suffix.replace(' ', '')) : 0;
  return { logMAR: form.lettersPerLine === 5 ? line - letters / 50 : line, suffix };
}
