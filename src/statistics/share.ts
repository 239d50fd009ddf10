import { betaQuantile, normalQuantile } from './distributions.js';
import { type Estimate, estimate, type Limits } from './estimate.js';
import { expectConfidence } from './expectations.js';
import { type ShareDesign, shareDesign } from './icc.js';
import { type PatientIndex, type Patients, patientsOf } from './patients.js';

/** Which interval: Wilson, or Clopper–Pearson for safety events and completeness. */
export type ShareMethod = 'wilson' | 'exact';

export interface ShareOptions {
  method: ShareMethod;
  /** Correlation of fellow eyes in the same variable over the whole audit, from `auditCorrelation`. */
  auditIcc?: number | undefined;
}

/** A share of eyes; `value` = count/n. */
export interface ShareEstimate extends Estimate {
  /** Eyes that have the property. */
  count: number;
  icc: number | undefined;
  /** Undefined where the share is exactly 0 or 1 and the patients stand for n. */
  designEffect: number | undefined;
  /** For a share of exactly 0 or 1: the limits if all eyes were independent, for the footnote. */
  independent?: Limits;
}

/**
 * Share of eyes with its interval at the eyes divided by the design effect; a share of exactly 0 or 1 with the
 * patients as n.
 *
 * @param hits       1 where the eye has the property, 0 where not
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95
 * @throws {RangeError} at a value other than 0 and 1, columns of two lengths, or a confidence outside 0 to 1
 * @source Wilson EB. J Am Stat Assoc 1927;22:209–212; Clopper CJ, Pearson ES. Biometrika 1934;26:404–413;
 * effective n: Rao JNK, Scott AJ. Biometrics 1992;48:577–585
 * @example shareInterval(Uint8Array.of(1, 1, 0, 1, 1), Int32Array.of(1, 2, 3, 4, 5), 0.95, { method: 'wilson' })
 * // 4/5: 0.8 (0.376 to 0.964)
 */
export function shareInterval(
  hits: Uint8Array,
  patients: Patients,
  confidence: number,
  options: ShareOptions,
): ShareEstimate {
  expectConfidence('shareInterval', confidence);
  const index = patientsOf('shareInterval', hits, patients);
  const count = countHits(hits);
  if (count === 0 || count === hits.length) return extremeShare(count, index, confidence, options.method);
  const design = shareDesign(hits, index, options.auditIcc);
  return innerShare(count, index, confidence, options.method, design);
}

function innerShare(
  count: number,
  patients: PatientIndex,
  confidence: number,
  method: ShareMethod,
  { icc, designEffect, notes }: ShareDesign,
): ShareEstimate {
  const about = { n: patients.eyes, patients: patients.count, method: `${method}-effective-n` as const };
  const limits = (): Limits => methods[method](count / designEffect, patients.eyes / designEffect, confidence);
  return { ...estimate(about, count / patients.eyes, limits, notes), count, icc, designEffect };
}

function extremeShare(count: number, patients: PatientIndex, confidence: number, method: ShareMethod): ShareEstimate {
  const share = count > 0 ? 1 : 0;
  const about = { n: patients.eyes, patients: patients.count, method: `${method}-patients` as const };
  const of = (n: number): Limits => methods[method](share * n, n, confidence);
  const found = { ...estimate(about, share, () => of(patients.count)), count, icc: undefined, designEffect: undefined };
  return found.low === undefined ? found : { ...found, independent: of(patients.eyes) };
}

function countHits(hits: Uint8Array): number {
  let count = 0;
  for (let i = 0; i < hits.length; i++) {
    const hit = hits[i] as number;
    if (hit > 1) throw new RangeError(`shareInterval: value ${i} is ${hit}; expected 0 or 1`);
    count += hit;
  }
  return count;
}

/**
 * What no event in n still allows: the share at which n of n without one has the probability 1 − confidence. At 95 %
 * it is close to 3/n, the rule of three.
 *
 * @param n  eyes, or patients where both eyes of some stand behind the count
 * @returns one-sided upper limit
 * @throws {RangeError} unless n > 0 and 0 < confidence < 1
 * @source Hanley JA, Lippman-Hand A. JAMA 1983;249:1743–1745 (pages *from memory*)
 * @example zeroEventLimit(100, 0.95) // 0.02951
 */
export function zeroEventLimit(n: number, confidence: number): number {
  expectConfidence('zeroEventLimit', confidence);
  if (!(n > 0)) throw new RangeError(`zeroEventLimit: n is ${n}; expected above 0`);
  return -Math.expm1(Math.log1p(-confidence) / n);
}

/**
 * Wilson score interval of x in n; x and n need not be whole. x = 0 has exactly the lower limit 0, x = n the upper 1.
 *
 * @throws {RangeError} unless 0 ≤ x ≤ n and n > 0
 * @source Newcombe RG. Stat Med 1998;17:857–872, method 3
 * @example wilson(81, 263, 0.95) // [0.2553, 0.3662]
 */
export function wilson(x: number, n: number, confidence: number): Limits {
  expectConfidence('wilson', confidence);
  return scoreLimits(x, n, normalQuantile((1 + confidence) / 2));
}

/** Wilson's limits at a given multiplier: z, or t where few patients stand behind it. @throws {RangeError} as `wilson` */
export function scoreLimits(x: number, n: number, z: number): Limits {
  expectCount('wilson', x, n);
  const p = x / n;
  const square = (z * z) / n;
  const centre = (p + square / 2) / (1 + square);
  const half = (z / (1 + square)) * Math.sqrt((p * (1 - p)) / n + square / (4 * n));
  return [x === 0 ? 0 : Math.max(0, centre - half), x === n ? 1 : Math.min(1, centre + half)];
}

/**
 * Clopper–Pearson "exact" interval of x in n; x and n need not be whole.
 *
 * @throws {RangeError} unless 0 ≤ x ≤ n and n > 0
 * @source Clopper CJ, Pearson ES. Biometrika 1934;26:404–413, by beta quantiles
 * @example clopperPearson(0, 20, 0.95) // [0, 0.1684]
 */
export function clopperPearson(x: number, n: number, confidence: number): Limits {
  expectConfidence('clopperPearson', confidence);
  expectCount('clopperPearson', x, n);
  const tail = (1 - confidence) / 2;
  return [x === 0 ? 0 : betaQuantile(tail, x, n - x + 1), x === n ? 1 : betaQuantile(1 - tail, x + 1, n - x)];
}

const methods = { wilson, exact: clopperPearson };

function expectCount(caller: string, x: number, n: number): void {
  if (!(n > 0 && x >= 0 && x <= n)) throw new RangeError(`${caller}: ${x} of ${n}; expected 0 ≤ x ≤ n, n above 0`);
}
