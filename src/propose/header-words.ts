import { statedUnit } from '../intake/header-unit.js';

/** Units that stand behind a name without brackets; the others mean something else there: k min, pre s. */
const bareUnits: readonly string[] = ['mm', 'um', 'dpt', 'dptr', 'mmhg', 'deg', 'd'];

/** Units of measurements that say nothing of how a column is read. */
const otherUnits: readonly string[] = ['mmhg', 'mm hg', 'cells/mm2', 'cells mm2', '/mm2', '1/mm2', '%'];

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
  /** A sign in the header: '+cyl', 'Cyl (−)'. */
  sign: 'plus' | 'minus' | undefined;
}

/** A text without the units in brackets. */
function withoutUnits(text: string): string {
  return text.replace(/[([{]([^()[\]{}]*)[)\]}]/g, (whole, inner: string) => {
    const isUnit = statedUnit(inner) !== undefined || otherUnits.includes(foldedText(inner).trim());
    return isUnit && !scaleNames.includes(statedUnit(inner) ?? '') ? ' ' : whole;
  });
}

/** These stand in brackets like units, but say how an acuity counts. */
const scaleNames: readonly string[] = ['decimal', 'logmar', 'letters'];

function signIn(text: string): HeaderWords['sign'] {
  const [, before, after] =
    /^\s*\(?([+\u2212\u2013-])\)?\s*[a-z]|[a-z]\s*\(?([+\u2212\u2013-])\)?\s*$/i.exec(text) ?? [];
  const sign = before ?? after;
  if (sign === undefined) return undefined;
  return sign === '+' ? 'plus' : 'minus';
}

/**
 * A header taken apart: its words, without a unit, and a sign. A change from small to capital letter begins a word too.
 *
 * @param header  as written
 * @example headerWords('axialLength [mm]').words // ['axial', 'length']
 */
export function headerWords(header: string): HeaderWords {
  const spaced = header
    // French: "à 1 mois".
    .replace(/(?<=\s)à\s+(?=\d)/gi, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\d)(\p{Lu}\p{Ll})/gu, '$1 $2');
  const rest = withoutUnits(spaced);
  const all = wordsOf(rest);
  const isNumbered = /^\d+$/.test(all.at(-2) ?? '');
  const trailing = all.length > 1 && !isNumbered && bareUnits.includes(all.at(-1) ?? '');
  return { words: trailing ? all.slice(0, -1) : all, sign: signIn(rest) };
}
