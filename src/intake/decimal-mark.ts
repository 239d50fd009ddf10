import type { DecimalMark } from './number.js';
import { plainSigns } from './signs.js';

/** What the numbers of a file say about their decimal mark. */
export type DecimalMarkJudgement =
  | { mark: DecimalMark }
  /**
   * undecided      only numbers such as 1,234, which may be thousands or thousandths
   * contradictory  both marks occur as decimal marks; `examples` has one of each
   * thousands      numbers with thousands marks, which are refused
   */
  | { mark: undefined; doubt: 'undecided' | 'contradictory' | 'thousands'; examples: readonly string[] };

/** A number with one mark, not part of a date or of a longer number. */
const marked = /(?<![\d.,])(\d*)([.,])(\d+)(?![\d.,])/g;

const thousands = /^[+-]?\d{1,3}(?:(?:,\d{3})+\.\d+|(?:\.\d{3})+,\d+|(?:,\d{3}){2,}|(?:\.\d{3}){2,})$/;

/** What may stand around numbers in a word that is a measurement; anything else is text and is not asked. */
const around =
  /^(?:[\s+\-/()@=°º%]|ds|dc|dptr?|d|mm|µm|um|m|deg|x|ax|axis|axe|achse|a|à|plano|pl|sph|cyl|logmar|letters|s|min)*$/i;

/**
 * Judges the decimal mark of a file from all its distinct words.
 *
 * A mark is a decimal mark where it cannot stand for thousands: not followed by exactly three digits, or preceded by
 * none, by 0, or by more than three. Nothing is guessed.
 *
 * @param words  distinct words of the columns that hold numbers, as written
 * @returns the mark ('none' where no number has one), or the doubt with the words that raise it
 * @source thousands are grouped by three; the rest is arithmetic on digits
 * @example judgeDecimalMark(['1,25', '1,234']) // { mark: 'comma' }
 */
export function judgeDecimalMark(words: Iterable<string>): DecimalMarkJudgement {
  const decisive: { '.'?: string; ','?: string } = {};
  const open: { '.'?: string; ','?: string } = {};
  for (const word of words) {
    const plain = plainSigns(word);
    if (thousands.test(plain)) return { mark: undefined, doubt: 'thousands', examples: [word] };
    if (!around.test(plain.replace(/[\d.,]+/g, ''))) continue;
    for (const [, before = '', mark, behind = ''] of plain.matchAll(marked)) {
      const kind = isDecisive(before, behind) ? decisive : open;
      kind[mark as '.' | ','] ??= word;
    }
  }
  return verdict(decisive, open);
}

function isDecisive(before: string, behind: string): boolean {
  return behind.length !== 3 || before.length === 0 || before.startsWith('0') || before.length > 3;
}

function verdict(decisive: { '.'?: string; ','?: string }, open: { '.'?: string; ','?: string }): DecimalMarkJudgement {
  const point = decisive['.'] ?? open['.'];
  const comma = decisive[','] ?? open[','];
  if (point !== undefined && comma !== undefined) {
    return { mark: undefined, doubt: 'contradictory', examples: [point, comma] };
  }
  if (decisive['.'] !== undefined) return { mark: 'point' };
  if (decisive[','] !== undefined) return { mark: 'comma' };
  const undecided = point ?? comma;
  return undecided === undefined ? { mark: 'none' } : { mark: undefined, doubt: 'undecided', examples: [undecided] };
}
