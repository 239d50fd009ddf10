import { binomialProbability, hypergeometricProbability } from '../distributions.js';

/** Two probabilities closer than this count as equal: they are, but for rounding. */
const tie = 1e-7;

/** Probability of everything less likely than what was seen, and half of everything equally likely. */
function midP(probabilities: readonly number[], seen: number): number {
  let less = 0;
  let equal = 0;
  for (const probability of probabilities) {
    if (probability < seen * (1 - tie)) less += probability;
    else if (probability <= seen * (1 + tie)) equal += probability;
  }
  return less + equal / 2;
}

/**
 * Fisher's test of two independent shares, two-sided mid-p: tables less probable than the one seen, and half of those
 * equally probable.
 *
 * @param xA, nA events and eyes of A; xB, nB of B
 * @throws {RangeError} unless 0 ≤ x ≤ n in both
 * @source Lancaster HO. J Am Stat Assoc 1961;56:223–234; Lydersen S, Fagerland MW, Laake P. Stat Med 2009;28:1159–1175
 * @example fisherMidP(3, 4, 1, 4) // 0.2571; the exact p is 0.4857
 */
export function fisherMidP(xA: number, nA: number, xB: number, nB: number): number {
  const events = expectTable(xA, nA, xB, nB);
  const first = Math.max(0, events - nB);
  const last = Math.min(nA, events);
  const probabilities: number[] = [];
  for (let x = first; x <= last; x++) probabilities.push(hypergeometricProbability(x, nA, nB, events));
  return midP(probabilities, hypergeometricProbability(xA, nA, nB, events));
}

/** Events of both samples together. */
function expectTable(xA: number, nA: number, xB: number, nB: number): number {
  if (!(xA >= 0 && xA <= nA && xB >= 0 && xB <= nB)) {
    throw new RangeError(`fisherMidP: ${xA} of ${nA} and ${xB} of ${nB}; expected 0 ≤ x ≤ n in both`);
  }
  return xA + xB;
}

/**
 * McNemar's test of two paired shares, two-sided mid-p of the discordant pairs.
 *
 * @param onlyA pairs where only A shows the property
 * @param onlyB pairs where only B does
 * @returns 1 without discordant pairs
 * @source Fagerland MW, Lydersen S, Laake P. BMC Med Res Methodol 2013;13:91
 * @example mcNemarMidP(6, 16) // 0.0347
 */
export function mcNemarMidP(onlyA: number, onlyB: number): number {
  const n = onlyA + onlyB;
  if (n === 0) return 1;
  const probabilities = Array.from({ length: n + 1 }, (_, k) => binomialProbability(k, n, 0.5));
  return midP(probabilities, probabilities[onlyA] as number);
}
