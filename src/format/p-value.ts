import { fixed, type NumberStyle, numberStyles } from './number.js';

/**
 * A p-value to three decimals; smaller ones as '< 0.001', compared before rounding.
 *
 * @param p      0 to 1
 * @param style  signs to use; published text with a point unless stated
 * @throws {RangeError} when p is outside 0 to 1
 * @source common practice, no source
 * @example pValue(0.00098) // '< 0.001'
 */
export function pValue(p: number, style: NumberStyle = numberStyles.typesetPoint): string {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`pValue: ${p}; expected 0 to 1`);
  return p < 0.001 ? `< ${fixed(0.001, 3, style)}` : fixed(p, 3, style);
}
