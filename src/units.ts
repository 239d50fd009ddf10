/** Dioptres. */
export type Dioptre = number;
/** Millimetres. */
export type Millimetre = number;
/** Metres: only the distance of a chart. */
export type Metre = number;
/** Degrees: an axis or meridian lies in (0, 180], a position on the limbus in [0, 360). */
export type Degree = number;
/** logMAR: the common logarithm of the minimum angle of resolution in minutes of arc; 0 is 6/6, more is worse. */
export type LogMAR = number;
/** Whole days, since 1970-01-01 or from surgery, as the name beside it says. */
export type Days = number;

/**
 * A quantity in whole millionths of its unit, the grain at which every threshold and every band edge is compared:
 * 0.54 − 0.29 is 0.25000000000000006 in binary and must still count as within 0.25.
 *
 * @param value  any quantity
 * @returns whole number, half away from zero; NaN for NaN
 * @source shared decision on thresholds; the cases of floating point are found by search, see the test
 * @example millionths(0.54 - 0.29) // 250000
 */
export function millionths(value: number): number {
  return Math.sign(value) * Math.round(Math.abs(value) * 1e6);
}
