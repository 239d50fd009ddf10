/**
 * A number at so many decimals, half away from zero, as a reader rounds the decimal he sees: 1.005 → 1.01,
 * −0.125 → −0.13, −0.004 → 0 and never −0.
 *
 * Binary numbers fall a hair short of the decimal they stand for (1.005 × 100 is 100.49999999999999), so that the
 * half is taken with a slack of 1e-9 of the last place, or four units in the last binary place where that is more.
 *
 * @param value     any quantity; NaN stays NaN, a missing value stays missing
 * @param decimals  0 to 15
 * @returns the double nearest to the rounded decimal; numbers too large to have such decimals as they are
 * @throws {RangeError} when decimals is not a whole number from 0 to 15
 * @source rule of common practice, no source; cases in the test from arithmetic on decimals
 * @example round(1.005, 2) // 1.01
 */
export function round(value: number, decimals: number): number {
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 15) {
    throw new RangeError(`round: ${decimals} decimals; expected a whole number from 0 to 15`);
  }
  const scale = 10 ** decimals;
  const scaled = Math.abs(value) * scale;
  if (scaled >= 1e15) return value;
  const whole = Math.floor(scaled + 0.5 + Math.max(1e-9, scaled * 2 ** -50));
  return whole === 0 ? 0 : (Math.sign(value) * whole) / scale;
}
