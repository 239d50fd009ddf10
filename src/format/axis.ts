import type { Degree } from '../units.js';
import { round } from './round.js';

/**
 * An axis as whole degrees. Wrapped after rounding: 0.3 becomes 0 and is printed 180.
 *
 * @param axis   degrees in (0, 180]; 0 is read as 180
 * @param width  digits to fill up with zeros, 3 for the "0.43 D @ 092" form
 * @throws {RangeError} when the axis is outside 0 to 180, or does not exist
 * @source axis notation of ISO 8429, *from memory*: 180 and never 0
 * @example axisText(0.3) // '180'
 */
export function axisText(axis: Degree, width = 1): string {
  if (!(axis >= 0 && axis <= 180)) throw new RangeError(`axisText: ${axis}°; expected 0 to 180`);
  const whole = round(axis, 0);
  return String(whole === 0 ? 180 : whole).padStart(width, '0');
}
