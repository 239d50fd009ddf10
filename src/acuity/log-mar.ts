import type { LogMAR } from '../units.js';

/**
 * logMAR of a fraction, 6/12 or 20/40: the logarithm of denominator over numerator. What was recorded is taken
 * exactly; it is never moved to the nearest line.
 *
 * @param numerator    distance of the test, in the unit of the denominator
 * @param denominator  distance at which the letter subtends five minutes of arc
 * @returns logMAR, + worse than 6/6; NaN where either is not positive
 * @source Holladay JT. J Refract Surg 1997;13:388–391
 * @example logMAROfFraction(20, 40) // 0.301
 */
export function logMAROfFraction(numerator: number, denominator: number): LogMAR {
  if (!(numerator > 0 && denominator > 0)) return Number.NaN;
  return Math.log10(denominator / numerator);
}

/**
 * logMAR of a decimal acuity, −log10 of it; the same double as that of the fraction it stands for.
 *
 * @returns logMAR; NaN where the acuity is not positive
 * @source Holladay JT. J Refract Surg 1997;13:388–391
 * @example logMAROfDecimal(0.5) // 0.301
 */
export function logMAROfDecimal(decimal: number): LogMAR {
  return logMAROfFraction(decimal, 1);
}

/**
 * logMAR of a letter score: 5 letters a line of 0.1, 85 letters are 6/6.
 *
 * @param letters  score, not the raw count of a chart at 4 m
 * @source Gregori NZ, Feuer W, Rosenfeld PJ. Retina 2010;30:1046–50 (volume and pages *from memory*)
 * @example logMAROfLetters(70) // 0.3
 */
export function logMAROfLetters(letters: number): LogMAR {
  return (85 - letters) / 50;
}

/**
 * Letter score of a logMAR: 85 − 50 logMAR.
 *
 * @source Gregori NZ, Feuer W, Rosenfeld PJ. Retina 2010;30:1046–50 (volume and pages *from memory*)
 * @example lettersOfLogMAR(1) // 35
 */
export function lettersOfLogMAR(logMAR: LogMAR): number {
  return 85 - 50 * logMAR;
}

/**
 * Decimal acuity of a logMAR. Means are taken in logMAR and then turned back, never of decimals.
 *
 * @source Holladay JT. J Cataract Refract Surg 2004;30 (visual acuity measurements)
 * @example decimalOfLogMAR(0.3) // 0.501
 */
export function decimalOfLogMAR(logMAR: LogMAR): number {
  return 10 ** -logMAR;
}

/**
 * Denominator of the fraction that stands for a logMAR at a given test distance.
 *
 * @param logMAR    as recorded or as a mean
 * @param distance  numerator of the fraction: 20 (feet) or 6 (metres)
 * @source Holladay JT. J Cataract Refract Surg 2004;30: 20/20 and 20/200 average to 20/63
 * @example denominatorOfLogMAR(0.5, 20) // 63.2
 */
export function denominatorOfLogMAR(logMAR: LogMAR, distance: number): number {
  return distance * 10 ** logMAR;
}
