import { plainSigns } from './signs.js';

/** Units that tell how the numbers of a column are to be read. */
export type StatedUnit =
  | 'D'
  | 'mm'
  | 'cm'
  | 'm'
  | 'µm'
  | 'deg'
  | 'clock'
  | 's'
  | 'min'
  | 'years'
  | 'months'
  | 'days'
  | 'decimal'
  | 'logmar'
  | 'letters';

/** Spellings in lower case. Single letters count in brackets or in a row of units only: AL D may be the right eye. */
const spellings: Readonly<Record<StatedUnit, readonly string[]>> = {
  D: ['d', 'dpt', 'dptr', 'dioptre', 'dioptres', 'diopter', 'diopters', 'dioptrien', 'dioptries'],
  mm: ['mm', 'millimetres', 'millimeters'],
  cm: ['cm'],
  m: ['m', 'metres', 'meters'],
  µm: ['µm', 'μm', 'um', 'micron', 'microns'],
  deg: ['°', 'º', 'deg', 'degree', 'degrees', 'grad'],
  clock: ['clock', 'clock hour', 'clock hours', "o'clock", 'uhr'],
  s: ['s', 'sec', 'secs', 'seconds'],
  min: ['min', 'mins', 'minutes'],
  years: ['y', 'yr', 'yrs', 'years', 'jahre', 'ans'],
  months: ['months', 'monate', 'mois'],
  days: ['days', 'tage', 'jours'],
  decimal: ['decimal', 'dezimal', 'décimale'],
  logmar: ['logmar', 'log mar'],
  letters: ['letters', 'buchstaben', 'lettres'],
};

const unitOf = new Map(
  (Object.keys(spellings) as StatedUnit[]).flatMap((unit) => spellings[unit].map((text) => [text, unit] as const)),
);

/**
 * The unit that a cell of a row of units states: `mm`, `(D)`, `[logMAR]`.
 *
 * @returns undefined where the cell states none of them
 * @source spellings in common practice, no source
 * @example statedUnit('[mm]') // 'mm'
 */
export function statedUnit(cell: string): StatedUnit | undefined {
  return unitOf.get(
    plainSigns(cell.replace(/[()[\]]/g, ' '))
      .toLowerCase()
      .replace(/\.$/, ''),
  );
}

/**
 * The unit that a header states: in brackets anywhere, or as its last word where it has two letters or more.
 *
 * @param header  as written
 * @source spellings in common practice, no source
 * @example headerUnit('K1 [mm]') // 'mm'
 */
export function headerUnit(header: string): StatedUnit | undefined {
  for (const [, inside = ''] of header.matchAll(/[([]([^()[\]]+)[)\]]/g)) {
    const unit = statedUnit(inside);
    if (unit) return unit;
  }
  const last =
    plainSigns(header)
      .split(/[ _,/]/)
      .at(-1) ?? '';
  return last.length > 1 && last !== plainSigns(header) ? statedUnit(last) : undefined;
}
