import { type LogMAR, millionths } from '../units.js';

/**
 * The line an acuity reaches: the smallest k with logMAR ≤ k/10 + 0.005. Line 0 is 20/20, 1 is 20/25, 3 is 20/40,
 * −1 is 20/16.
 *
 * The nominal lines do not fall on tenths (20/40 is 0.30103), hence the half step of slack; it admits every nominal
 * line from 20/10 to 20/200 and still keeps 20/30 out of the class of 20/25.
 *
 * @returns whole number; "20/40 or better" is line ≤ 3; NaN for NaN
 * @source rule derived from the chart of standard lines, worked in the test
 * @example lineOfLogMAR(Math.log10(2)) // 3
 */
export function lineOfLogMAR(logMAR: LogMAR): number {
  return Math.ceil((millionths(logMAR) - 5000) / 100_000) + 0;
}

/**
 * Lines gained (+) or lost (−) by a change of acuity, on fixed edges of |Δ|: 0 below 0.05; 1 from 0.05 to below 0.19;
 * k ≥ 2 from 0.1k − 0.01 to below 0.1(k + 1) − 0.01. Every two-line step of the standard chart is two lines (the
 * smallest is 0.1938), nine letters are not.
 *
 * @param gain  logMAR before − logMAR after: + is better
 * @returns whole number, never −0; NaN for NaN
 * @source edges settled for this project; each step of the chart is checked in the test
 * @example linesGained(-0.2) // −2
 */
export function linesGained(gain: LogMAR): number {
  const size = Math.abs(millionths(gain));
  if (size < 50_000) return 0;
  return Math.sign(gain) * (size < 190_000 ? 1 : Math.floor((size + 10_000) / 100_000));
}
