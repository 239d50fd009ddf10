/** Units that headers carry, by the words for them. */
export type HeaderUnit = 'D' | 'mm' | 'µm' | 'deg' | 'mmHg' | 'm' | 's' | 'min' | 'years' | 'days' | 'cells/mm²' | '%';

const unitWords: Readonly<Record<HeaderUnit, readonly string[]>> = {
  D: ['d', 'dpt', 'dptr', 'dioptre', 'dioptres', 'diopter', 'diopters', 'dioptrie', 'dioptrien', 'dioptries'],
  mm: ['mm'],
  µm: ['um', 'micron', 'microns', 'mikrometer'],
  deg: ['°', 'º', 'deg', 'degree', 'degrees', 'grad', 'degres', 'degre'],
  mmHg: ['mmhg', 'mm hg'],
  m: ['m'],
  s: ['s', 'sec', 'seconds', 'sekunden', 'secondes'],
  min: ['min', 'minutes', 'minuten'],
  years: ['years', 'yrs', 'jahre', 'ans'],
  days: ['days', 'tage', 'jours'],
  'cells/mm²': ['cells/mm2', '/mm2', 'cells mm2', 'zellen/mm2', 'cellules/mm2', '1/mm2'],
  '%': ['%'],
};

const unitOf = new Map(
  Object.entries(unitWords).flatMap(([unit, words]) => words.map((word) => [word, unit as HeaderUnit])),
);

/** Units that stand behind a name without brackets; the others mean something else there: k min, pre s. */
const bareUnits: readonly string[] = ['mm', 'um', 'dpt', 'dptr', 'mmhg', 'deg', 'd'];

/** Letters without accents and ligatures, in lower case: 'Œil opéré' → 'oeil opere'. */
export function foldedText(text: string): string {
  return text
    .toLowerCase()
    .replace(/[µμ]/g, 'u')
    .replace(/ß/g, 'ss')
    .replace(/œ/g, 'oe')
    .replace(/æ/g, 'ae')
    .replace(/²/g, '2')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '');
}

/** Words of a text: letters and digits between anything else. */
export function wordsOf(text: string): readonly string[] {
  return foldedText(text)
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
}

export interface HeaderWords {
  /** Words in order, the unit left out where one stands behind them. */
  words: readonly string[];
  unit: HeaderUnit | undefined;
  /** A sign in the header: '+cyl', 'Cyl (−)'. */
  sign: 'plus' | 'minus' | undefined;
}

const bracketed = /[([{]([^()[\]{}]*)[)\]}]/g;

/** The unit in brackets, if there is one, and the text without it. */
function withoutBrackets(text: string): { rest: string; unit: HeaderUnit | undefined } {
  let unit: HeaderUnit | undefined;
  const rest = text.replace(bracketed, (whole, inner: string) => {
    const found = unitOf.get(foldedText(inner).replace(/\./g, '').trim());
    unit ??= found;
    return found ? ' ' : whole;
  });
  return { rest, unit };
}

function signIn(text: string): HeaderWords['sign'] {
  const [, before, after] =
    /^\s*\(?([+\u2212\u2013-])\)?\s*[a-z]|[a-z]\s*\(?([+\u2212\u2013-])\)?\s*$/i.exec(text) ?? [];
  const sign = before ?? after;
  if (sign === undefined) return undefined;
  return sign === '+' ? 'plus' : 'minus';
}

/**
 * A header taken apart: words, unit, sign. A change from small to capital letter begins a word too.
 *
 * @param header  as written
 * @param units   the cell below it, where the file has a row of units; '' none
 * @example headerWords('axialLength [mm]').words // ['axial', 'length'], unit 'mm'
 */
export function headerWords(header: string, units = ''): HeaderWords {
  const spaced = header.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replace(/(\d)(\p{Lu}\p{Ll})/gu, '$1 $2');
  const { rest, unit: inBrackets } = withoutBrackets(spaced);
  const below = unitOf.get(
    foldedText(units)
      .replace(/[()[\].]/g, '')
      .trim(),
  );
  const all = wordsOf(rest);
  const last = all.at(-1) ?? '';
  const isNumbered = /^\d+$/.test(all.at(-2) ?? '');
  const trailing = all.length > 1 && !isNumbered && bareUnits.includes(last) ? unitOf.get(last) : undefined;
  const degree = /[°º]/.test(rest) ? 'deg' : undefined;
  return {
    words: trailing ? all.slice(0, -1) : all,
    unit: inBrackets ?? below ?? trailing ?? degree,
    sign: signIn(rest),
  };
}
