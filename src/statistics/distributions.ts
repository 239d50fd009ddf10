/**
 * The one module of distribution functions: every p value and every quantile of the project goes through here.
 *
 * Normal, t, chi-square, F, beta and binomial come from the incomplete beta and gamma functions of
 * `distributions/`: Loader's saddle-point prefactor, modified Lentz continued fractions, Newton on the smaller tail for
 * quantiles. Both tails are computed as themselves, never as 1 − the other. The packages at hand were measured on the
 * same grid: jstat's t, F and beta are off by 1e-7 to several percent and its normal tail is 0 beyond 8 SD;
 * simple-statistics looks the normal up in a table. jstat's hypergeometric passes the grid and
 * serves small tables; for large ones the probabilities follow from binomial ones (Loader).
 *
 * @source test/statistics/distributions.test.ts runs all of shared/reference/distributions.json at relative 1e-10
 */

import jStat from 'jstat';
import { betaSlope } from './distributions/saddle-point.js';
import { betaTails, gammaTails, solveTails, type Tails } from './distributions/tails.js';
import { expectPositive, expectProbability } from './expectations.js';

/** P(Z > z) of the standard normal. @example normalUpper(1.959963984540054) // 0.025 */
export function normalUpper(z: number): number {
  const { lower, upper } = gammaTails(0.5, (z * z) / 2);
  return z > 0 ? upper / 2 : 0.5 + lower / 2;
}

/** P(Z ≤ z) of the standard normal. @example normalLower(-1.959963984540054) // 0.025 */
export function normalLower(z: number): number {
  return normalUpper(-z);
}

/**
 * z with P(Z ≤ z) = p.
 *
 * @throws {RangeError} unless 0 ≤ p ≤ 1; 0 and 1 give −∞ and ∞
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(p: number): number {
  return symmetricQuantile('normalQuantile', p, (lower, upper) =>
    Math.sqrt(2 * Math.exp(solveTails(lower, upper, -0.7, (v) => gammaTails(0.5, Math.exp(v))))),
  );
}

/**
 * P(T > t) of Student's t with `df` degrees of freedom, which need not be whole.
 *
 * @throws {RangeError} unless df > 0
 * @source Abramowitz & Stegun 26.7.1: half the incomplete beta function at t²/(df + t²)
 * @example tUpper(2, 9) // 0.0383
 */
export function tUpper(t: number, df: number): number {
  expectPositive('tUpper', 'df', df);
  const square = t * t;
  const { lower, upper } = betaTails(0.5, df / 2, square / (df + square), df / (df + square));
  return t > 0 ? upper / 2 : 0.5 + lower / 2;
}

/** P(T ≤ t). @throws {RangeError} unless df > 0 @example tLower(-2, 9) // 0.0383 */
export function tLower(t: number, df: number): number {
  return tUpper(-t, df);
}

/** P(|T| > |t|), the two-sided p value of a t statistic. @example tTwoSided(2.262157, 9) // 0.05 */
export function tTwoSided(t: number, df: number): number {
  return 2 * tUpper(Math.abs(t), df);
}

/**
 * t with P(T ≤ t) = p.
 *
 * @throws {RangeError} unless 0 ≤ p ≤ 1 and df > 0
 * @example tQuantile(0.975, 9) // 2.262157162798205
 */
export function tQuantile(p: number, df: number): number {
  expectPositive('tQuantile', 'df', df);
  return symmetricQuantile('tQuantile', p, (lower, upper) => Math.sqrt(df * betaOdds(lower, upper, 0.5, df / 2)));
}

/** Quantile of a distribution symmetric about 0, from the place where its magnitude has given tails. */
function symmetricQuantile(caller: string, p: number, magnitude: (lower: number, upper: number) => number): number {
  expectProbability(caller, 'p', p);
  if (p === 0 || p === 1) return p === 0 ? -Infinity : Infinity;
  if (p === 0.5) return 0;
  const tail = p < 0.5 ? p : 1 - p;
  const found = magnitude(1 - 2 * tail, 2 * tail);
  return p < 0.5 ? -found : found;
}

/** Tails of the chi-square distribution. */
function chiSquareTails(caller: string, x: number, df: number): Tails {
  expectPositive(caller, 'df', df);
  return gammaTails(df / 2, Math.max(0, x) / 2);
}

/** P(X ≤ x) of chi-square. @throws {RangeError} unless df > 0 @example chiSquareLower(3.841459, 1) // 0.95 */
export function chiSquareLower(x: number, df: number): number {
  return chiSquareTails('chiSquareLower', x, df).lower;
}

/** P(X > x) of chi-square. @example chiSquareUpper(5.991464547107979, 2) // 0.05 */
export function chiSquareUpper(x: number, df: number): number {
  return chiSquareTails('chiSquareUpper', x, df).upper;
}

/**
 * x with P(X ≤ x) = p of chi-square.
 *
 * @throws {RangeError} unless 0 ≤ p ≤ 1 and df > 0
 * @example chiSquareQuantile(0.95, 2) // 5.9915
 */
export function chiSquareQuantile(p: number, df: number): number {
  expectPositive('chiSquareQuantile', 'df', df);
  expectProbability('chiSquareQuantile', 'p', p);
  if (p === 0 || p === 1) return p === 0 ? 0 : Infinity;
  const a = df / 2;
  return 2 * Math.exp(solveTails(p, 1 - p, Math.log(a), (v) => gammaTails(a, Math.exp(v))));
}

/** Tails of the F distribution. */
function fTails(caller: string, f: number, df1: number, df2: number): Tails {
  expectPositive(caller, 'df1', df1);
  expectPositive(caller, 'df2', df2);
  const scaled = df1 * Math.max(0, f);
  return betaTails(df1 / 2, df2 / 2, scaled / (scaled + df2), df2 / (scaled + df2));
}

/** P(F ≤ f). @throws {RangeError} unless both degrees are above 0 @example fLower(3, 2, 10) // 0.9046 */
export function fLower(f: number, df1: number, df2: number): number {
  return fTails('fLower', f, df1, df2).lower;
}

/**
 * P(F > f), the p value of an F statistic.
 *
 * @throws {RangeError} unless both degrees are above 0
 * @source Abramowitz & Stegun 26.6.2: the incomplete beta function at df₁·f/(df₁·f + df₂)
 * @example fUpper(3, 2, 10) // 0.0954
 */
export function fUpper(f: number, df1: number, df2: number): number {
  return fTails('fUpper', f, df1, df2).upper;
}

/**
 * f with P(F ≤ f) = p.
 *
 * @throws {RangeError} unless 0 ≤ p ≤ 1 and both degrees are above 0
 * @example fQuantile(0.95, 2, 10) // 4.1028
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  expectPositive('fQuantile', 'df1', df1);
  expectPositive('fQuantile', 'df2', df2);
  expectProbability('fQuantile', 'p', p);
  if (p === 0 || p === 1) return p === 0 ? 0 : Infinity;
  return (df2 / df1) * betaOdds(p, 1 - p, df1 / 2, df2 / 2);
}

/** x/(1 − x) of the beta distribution at given tails. */
function betaOdds(lower: number, upper: number, a: number, b: number): number {
  const at = (v: number): Tails => betaTails(a, b, 1 / (1 + Math.exp(-v)), 1 / (1 + Math.exp(v)));
  return Math.exp(solveTails(lower, upper, Math.log(a / b), at));
}

/**
 * P(X ≤ x) of the beta distribution.
 *
 * @throws {RangeError} unless a, b > 0 and 0 ≤ x ≤ 1
 * @example betaLower(0.5, 2, 3) // 0.6875
 */
export function betaLower(x: number, a: number, b: number): number {
  expectPositive('betaLower', 'a', a);
  expectPositive('betaLower', 'b', b);
  expectProbability('betaLower', 'x', x);
  return betaTails(a, b, x, 1 - x).lower;
}

/**
 * x with P(X ≤ x) = p of the beta distribution.
 *
 * @throws {RangeError} unless a, b > 0 and 0 ≤ p ≤ 1
 * @example betaQuantile(0.975, 3, 18) // 0.3170
 */
export function betaQuantile(p: number, a: number, b: number): number {
  expectPositive('betaQuantile', 'a', a);
  expectPositive('betaQuantile', 'b', b);
  expectProbability('betaQuantile', 'p', p);
  if (p === 0 || p === 1) return p;
  const odds = betaOdds(p, 1 - p, a, b);
  return odds / (1 + odds);
}

/** P(X = k) of k events in n. @throws {RangeError} unless 0 ≤ p ≤ 1 @example binomialProbability(3, 10, 0.5) // 0.1172 */
export function binomialProbability(k: number, n: number, p: number): number {
  expectProbability('binomialProbability', 'p', p);
  if (k < 0 || k > n) return 0;
  if (p === 0 || p === 1) return k === n * p ? 1 : 0;
  if (k === 0) return Math.exp(n * Math.log1p(-p));
  if (k === n) return Math.exp(n * Math.log(p));
  // The slope of the incomplete beta is k(n − k)/n times the binomial probability.
  return (betaSlope(k, n - k, p, 1 - p) * n) / (k * (n - k));
}

/**
 * P(X ≤ k) of k events in n.
 *
 * @throws {RangeError} unless 0 ≤ p ≤ 1
 * @source Abramowitz & Stegun 26.5.24: the incomplete beta function
 * @example binomialLower(3, 10, 0.5) // 0.1719
 */
export function binomialLower(k: number, n: number, p: number): number {
  expectProbability('binomialLower', 'p', p);
  if (k < 0 || k >= n) return k < 0 ? 0 : 1;
  return betaTails(k + 1, n - k, p, 1 - p).upper;
}

/** Up to this many eyes jstat's product is exact to 1e-15 and quick; its cost grows with their number. */
const mostForProduct = 5000;

/**
 * P(X = x): x white among k drawn from m white and n black.
 *
 * @source jstat where it is quick; beyond, Loader 2000: a quotient of binomial probabilities at p = k/(m + n)
 * @example hypergeometricProbability(3, 4, 4, 4) // 16/70 = 0.2286
 */
export function hypergeometricProbability(x: number, m: number, n: number, k: number): number {
  if (m + n <= mostForProduct) return jStat.hypgeom.pdf(x, m + n, m, k);
  if (k === 0 || k === m + n) return x === (k === 0 ? 0 : m) ? 1 : 0;
  const p = k / (m + n);
  return (binomialProbability(x, m, p) * binomialProbability(k - x, n, p)) / binomialProbability(k, m + n, p);
}
