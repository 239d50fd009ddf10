/** Steps of a millionth: finer than any instrument, far coarser than the noise of 0.54 − 0.29. */
const steps = 1e6;

/** Magnitude in whole millionths. @throws {RangeError} when the value is not a number */
function millionths(caller: string, value: number): number {
  if (Number.isNaN(value)) throw new RangeError(`${caller}: the value is NaN; expected a number`);
  return value < 0 ? -Math.round(-value * steps) : Math.round(value * steps);
}

/**
 * Whether a magnitude lies within a limit: the one threshold rule of the project, for shares and for band edges.
 *
 * |value|, rounded to 1e-6, at most the limit; the limit itself is within.
 *
 * @param value any signed quantity, at full precision: 0.504 is outside 0.50
 * @param limit in the value's unit, not negative
 * @throws {RangeError} when either is NaN or the limit is negative
 * @source settled rule of this project; the trap is 0.54 − 0.29 = 0.25000000000000006
 * @example isWithin(0.54 - 0.29, 0.25) // true
 */
export function isWithin(value: number, limit: number): boolean {
  if (!(limit >= 0)) throw new RangeError(`isWithin: limit ${limit}; expected 0 or above`);
  return millionths('isWithin', Math.abs(value)) <= millionths('isWithin', limit);
}

/**
 * Whether a signed value is at or below a limit, by the same rounding: for logMAR, at or better than a line.
 *
 * @param value signed, in the limit's unit; for acuity logMAR, lower is better
 * @param limit for an acuity line the caller adds its slack (nominal tenth + 0.005)
 * @throws {RangeError} when either is NaN
 * @source settled rule of this project
 * @example isAtOrBetter(-Math.log10(0.5), 0.305) // true: 20/40 is at the line 20/40
 */
export function isAtOrBetter(value: number, limit: number): boolean {
  return millionths('isAtOrBetter', value) <= millionths('isAtOrBetter', limit);
}
