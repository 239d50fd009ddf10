import { fixed, type NumberStyle, numberStyles } from './number.js';

/**
 * A share as a percentage, without its sign: one decimal, none where fewer than 100 eyes carry it.
 *
 * @param share  0 to 1
 * @param n      size of the denominator
 * @param style  signs to use; published text with a point unless stated
 * @throws {RangeError} when the share is outside 0 to 1 or n is below 1
 * @source AMA style for percentages, *from memory*; at 100 and more always one decimal
 * @example percent(287 / 371, 371) // '77.4'
 */
export function percent(share: number, n: number, style: NumberStyle = numberStyles.typesetPoint): string {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`percent: share ${share}; expected 0 to 1`);
  if (!(n >= 1)) throw new RangeError(`percent: n ${n}; expected at least 1`);
  return fixed(100 * share, n < 100 ? 0 : 1, style);
}
