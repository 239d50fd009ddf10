import { fixed, type NumberStyle, numberStyles } from './number.js';

/**
 * The limits of an interval. A word between them, since a dash beside a minus sign misleads.
 *
 * @param low       finite
 * @param high      finite, not below `low`
 * @param decimals  0 to 15
 * @param style     signs to use; published text with a point unless stated
 * @param to        the word of the report's language
 * @throws {RangeError} when a limit is not finite, or the limits are exchanged
 * @source common practice, no source
 * @example interval(-0.1, 0.012, 2) // '−0.10 to 0.01'
 */
export function interval(
  low: number,
  high: number,
  decimals: number,
  style: NumberStyle = numberStyles.typesetPoint,
  to = 'to',
): string {
  if (low > high) throw new RangeError(`interval: ${low} to ${high}; expected the lower limit first`);
  return `${fixed(low, decimals, style)} ${to} ${fixed(high, decimals, style)}`;
}
