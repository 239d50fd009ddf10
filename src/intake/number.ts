import { plainSigns } from './signs.js';

/** How decimals are marked in a file; 'none' where no number in it has any. */
export type DecimalMark = 'point' | 'comma' | 'none';

/** What may stand behind a number: the unit its field is declared in, spelled in any of these ways, in lower case. */
const unitWords = {
  D: ['d', 'dpt', 'dptr', 'dioptre', 'dioptres', 'diopter', 'diopters', 'dioptrie', 'dioptrien', 'dioptries'],
  mm: ['mm'],
  µm: ['µm', 'μm', 'um', 'micron', 'microns'],
  m: ['m'],
  deg: ['°', 'º', 'deg', 'degree', 'degrees', 'grad'],
  mmHg: ['mmhg', 'mm hg'],
  s: ['s', 'sec', 'seconds'],
  min: ['min', 'mins', 'minutes'],
  years: ['y', 'yr', 'yrs', 'years', 'ans', 'jahre'],
  'cells/mm²': ['cells/mm²', 'cells/mm2', '/mm²', '/mm2', 'zellen/mm²', 'cellules/mm²'],
  '%': ['%'],
} as const;

export type WrittenUnit = keyof typeof unitWords;

/** How a number of one field may be written. */
export interface NumberForm {
  decimal: DecimalMark;
  /** A unit behind the number is accepted only where it is the field's own: '43.5 D' is no radius in mm. */
  unit?: WrittenUnit;
}

const shapes: Readonly<Record<DecimalMark, RegExp>> = {
  point: /^([+-]?) ?(\d+(?:\.\d+)?|\.\d+)(.*)$/,
  comma: /^([+-]?) ?(\d+(?:,\d+)?|,\d+)(.*)$/,
  none: /^([+-]?) ?(\d+)(.*)$/,
};

/**
 * A number as people type it: `+0.50`, `−0.50`, `-0,50`, `.5`, `1.25 D`, `180°`, non-breaking blanks.
 *
 * Thousands marks, a second number, a trailing sign, an exponent and a decimal mark that is not the file's own are
 * refused: they are findings, not guesses.
 *
 * @param text  one cell as written
 * @param form  the file's decimal mark and the field's unit
 * @returns the number in the field's unit; undefined where the text is no number
 * @source spellings in common practice, no source
 * @example parseNumber('−0,50 D', { decimal: 'comma', unit: 'D' }) // −0.5
 */
export function parseNumber(text: string, { decimal, unit }: NumberForm): number | undefined {
  const found = shapes[decimal].exec(plainSigns(text));
  if (!found) return undefined;
  const [, sign = '', digits = '', behind = ''] = found;
  if (!isUnit(behind.trim().toLowerCase(), unit)) return undefined;
  const size = Number(digits.replace(',', '.'));
  return sign === '-' && size !== 0 ? -size : size;
}

function isUnit(behind: string, unit: WrittenUnit | undefined): boolean {
  if (behind === '') return true;
  return unit !== undefined && (unitWords[unit] as readonly string[]).includes(behind.replace(/\.$/, ''));
}
