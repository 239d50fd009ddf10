import type { Random } from './random.js';

/** One acuity as a lane writes it: a line of its chart by logMAR, or a word of low vision. */
export type Acuity = { readonly line: number } | { readonly word: 'CF' | 'HM' };

/** Charts of the two lanes: decimal tenths in the north, Snellen's feet in the south. */
export const DECIMAL_LINES = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.25];
export const FEET_LINES = [400, 200, 100, 80, 70, 60, 50, 40, 30, 25, 20, 16];

/** logMAR of a line of each chart. */
export function logMarOfDecimal(decimal: number): number {
  return -Math.log10(decimal);
}
export function logMarOfFeet(feet: number): number {
  return Math.log10(feet / 20);
}

/** Beyond the chart: fingers from here, hand movements from there. */
const COUNTS_FINGERS = 1.45;
const SEES_HANDS = 2;

/** The last line that an eye of this acuity reads through, give or take the day. */
export function read(random: Random, logMar: number, lines: readonly number[]): Acuity {
  const today = logMar + 0.03 * random.normal();
  if (today > SEES_HANDS) return { word: 'HM' };
  if (today > COUNTS_FINGERS) return { word: 'CF' };
  const nearest = lines.reduce((best, line) => (Math.abs(line - today) < Math.abs(best - today) ? line : best));
  return { line: nearest };
}

/** Blur of a spherical equivalent and a cylinder, dioptres. */
function blur(equivalent: number, cylinder: number): number {
  return Math.sqrt(equivalent ** 2 + (0.35 * cylinder) ** 2);
}

/** logMAR without correction: a third of a unit a dioptre, and the chart's end for the very short-sighted. */
export function uncorrected(corrected: number, equivalent: number, cylinder: number): number {
  return Math.max(corrected, Math.min(1.25, corrected + 0.32 * blur(equivalent, cylinder)));
}

/** Never read worse with correction than without: a lane that finds so repeats the reading. */
export function notWorse(corrected: Acuity, without: Acuity): Acuity {
  return rank(corrected) > rank(without) ? corrected : without;
}

/** logMAR, words beyond every line. */
export function rank(acuity: Acuity): number {
  if ('line' in acuity) return acuity.line;
  return acuity.word === 'CF' ? 1.9 : 2.3;
}
