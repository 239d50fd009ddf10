/**
 * Conversions between lens constants: starting values only, never an audited constant. Coefficients from memory.
 *
 * @source Holladay 1988 and 1997; Retzlaff et al. 1990; Haigis (constants of the formulas, from memory)
 * @example convertedConstants(118.4) // { SF: 1.4499, pACD: 5.1987, ACD: 5.2139, a0: 1.5269 }
 */
export function convertedConstants(a: number): { SF: number; pACD: number; ACD: number; a0: number } {
  return {
    SF: 0.5663 * a - 65.6,
    pACD: 0.58357 * a - 63.896,
    ACD: 0.62467 * a - 68.747,
    a0: 0.62467 * a - 72.434,
  };
}
