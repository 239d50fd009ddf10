import type { AcuityNumbers } from './acuity.js';
import { type DecimalMark, parseNumber } from './number.js';
import { plainSigns } from './signs.js';

/** Which scales the bare numbers of an acuity column can be. */
export interface AcuityScale {
  /** Distinct words that are bare numbers; fractions and low-vision words need no scale. */
  bareNumbers: number;
  /** Every scale that can hold all of them, in a fixed order; two or more: somebody must say which. */
  scales: readonly AcuityNumbers[];
  /** Up to three bare numbers, as written, to show with the question. */
  examples: readonly string[];
}

/** Decimal 2.0 is the best line of charts, −0.31 logMAR with it; 3.01 is no perception of light with its slack. */
const canBe: Readonly<Record<AcuityNumbers, (value: number) => boolean>> = {
  decimal: (value) => value > 0 && value <= 2.05,
  logmar: (value) => value >= -0.31 && value <= 3.01,
  letters: (value) => Number.isInteger(value) && value >= 0 && value <= 100,
};

/**
 * Judges whether the bare numbers of an acuity column could be of more than one scale: 0.3 is a poor decimal and a fair
 * logMAR. Nothing is guessed; the caller asks where `scales` has more than one entry.
 *
 * @param words    distinct words of the column, as written
 * @param decimal  the file's decimal mark
 * @source ranges of the quality rule for acuity; charts end at 20/10
 * @example acuityScale(['0.3', '85', '70'], 'point').scales // []: no scale holds them all
 */
export function acuityScale(words: Iterable<string>, decimal: DecimalMark): AcuityScale {
  const numbers: number[] = [];
  const examples: string[] = [];
  for (const word of words) {
    const value = parseNumber(plainSigns(word), { decimal });
    if (value === undefined) continue;
    numbers.push(value);
    if (examples.length < 3) examples.push(word);
  }
  const scales = numbers.length === 0 ? [] : (Object.keys(canBe) as AcuityNumbers[]);
  return { bareNumbers: numbers.length, scales: scales.filter((scale) => numbers.every(canBe[scale])), examples };
}
