import { expectProbability } from '../expectations.js';

/**
 * Holm's step-down adjustment of a declared family of p values, in the given order.
 *
 * @param p the family; a comparison without a test is left out before
 * @throws {RangeError} at a p outside 0 to 1
 * @source Holm S. Scand J Stat 1979;6:65–70
 * @example holm([0.01, 0.02, 0.03, 0.04]) // [0.04, 0.06, 0.06, 0.06]
 */
export function holm(p: readonly number[]): number[] {
  for (const one of p) expectProbability('holm', 'p', one);
  const order = p.map((_, i) => i).sort((i, j) => (p[i] as number) - (p[j] as number) || i - j);
  const adjusted = new Array<number>(p.length);
  let largest = 0;
  order.forEach((i, rank) => {
    largest = Math.max(largest, Math.min(1, (p.length - rank) * (p[i] as number)));
    adjusted[i] = largest;
  });
  return adjusted;
}
