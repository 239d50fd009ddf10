import { round } from './round.js';

/** How a number is set: the sign of minus, the decimal mark, and what stands between thousands. */
export interface NumberStyle {
  minus: '\u2212' | '-';
  mark: '.' | ',';
  group: ',' | '.' | '\u202f' | '';
}

/** Published text has a true minus sign; files that programs read have a hyphen and no thousands mark. */
export const numberStyles = {
  typesetPoint: { minus: '\u2212', mark: '.', group: ',' },
  typesetComma: { minus: '\u2212', mark: ',', group: '.' },
  filePoint: { minus: '-', mark: '.', group: '' },
  fileComma: { minus: '-', mark: ',', group: '' },
} as const satisfies Record<string, NumberStyle>;

/**
 * A number with a fixed count of decimals.
 *
 * @param value     finite
 * @param decimals  0 to 15
 * @param style     signs to use; published text with a point unless stated
 * @returns text, never "−0.00"
 * @throws {RangeError} when the value is not finite: a statistic that does not exist has no number text
 * @example fixed(-0.125, 2) // '−0.13'
 */
export function fixed(value: number, decimals: number, style: NumberStyle = numberStyles.typesetPoint): string {
  const rounded = round(finite('fixed', value), decimals);
  const digits = Math.abs(rounded).toFixed(decimals).replace('.', style.mark);
  return rounded < 0 ? style.minus + digits : digits;
}

/**
 * A number with a fixed count of decimals and its sign always shown, as refractions are written. Zero has no sign.
 *
 * @param value     finite
 * @param decimals  0 to 15
 * @param style     signs to use; published text with a point unless stated
 * @throws {RangeError} when the value is not finite
 * @example signed(0.5, 2) // '+0.50'
 */
export function signed(value: number, decimals: number, style: NumberStyle = numberStyles.typesetPoint): string {
  const plus = round(finite('signed', value), decimals) > 0 ? '+' : '';
  return plus + fixed(value, decimals, style);
}

/**
 * A count, its thousands set apart.
 *
 * @param value  whole number ≥ 0
 * @param style  signs to use; published text with a point unless stated
 * @throws {RangeError} when the value is not a whole number ≥ 0
 * @example count(2911) // '2,911'
 */
export function count(value: number, style: NumberStyle = numberStyles.typesetPoint): string {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`count: ${value}; expected a whole number from 0`);
  }
  return String(value).replace(/\B(?=(\d{3})+$)/g, style.group);
}

/**
 * The shortest text that reads back to the same double, for files that programs read: always a point and a hyphen.
 *
 * @param value  finite, or undefined for a statistic that does not exist
 * @returns text; '0' for −0; '' for undefined
 * @throws {RangeError} when the value is NaN or infinite: no such number may leave
 * @source ECMA-262, Number::toString
 * @example shortest(0.1 + 0.2) // '0.30000000000000004'
 */
export function shortest(value: number | undefined): string {
  return value === undefined ? '' : String(finite('shortest', value));
}

function finite(caller: string, value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${caller}: ${value}; expected a finite number`);
  return value === 0 ? 0 : value;
}
