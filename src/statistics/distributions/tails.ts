import { betaSlope, gammaSlope } from './saddle-point.js';

/** Both tails of a distribution at one place, each to full relative precision, and the slope of the lower one. */
export interface Tails {
  lower: number;
  upper: number;
  slope: number;
}

/** Relative step at which a continued fraction or series has converged. */
const converged = 4e-16;
/** Stands for zero in Lentz's algorithm. */
const tiny = 1e-300;

/**
 * Regularised incomplete beta function: both tails at x, and x^a·y^b/B(a, b).
 *
 * @param x from 0 to 1
 * @param y 1 − x, given apart so that neither tail loses digits
 * @source Abramowitz & Stegun 26.5.8 by the modified Lentz algorithm; prefactor by Loader's saddle point
 */
export function betaTails(a: number, b: number, x: number, y: number): Tails {
  const slope = betaSlope(a, b, x, y);
  if (x <= (a + 1) / (a + b + 2)) {
    const lower = slope === 0 ? 0 : (slope * betaFraction(a, b, x)) / a;
    return { lower, upper: 1 - lower, slope };
  }
  const upper = slope === 0 ? 0 : (slope * betaFraction(b, a, y)) / b;
  return { lower: 1 - upper, upper, slope };
}

/** Continued fraction of the incomplete beta function by modified Lentz (Abramowitz & Stegun 26.5.8). */
function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; ; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    const step = d * c;
    value *= step;
    if (Math.abs(step - 1) <= converged) return value;
  }
}

/**
 * Regularised incomplete gamma function: both tails at x, and x^a·e^−x/Γ(a).
 *
 * @source Abramowitz & Stegun 6.5.29 below a + 1, 6.5.31 above; prefactor by Loader's saddle point
 */
export function gammaTails(a: number, x: number): Tails {
  const slope = gammaSlope(a, x);
  if (x < a + 1) {
    const lower = slope === 0 ? 0 : (slope / a) * gammaSeries(a, x);
    return { lower, upper: 1 - lower, slope };
  }
  const upper = slope === 0 ? 0 : slope * gammaFraction(a, x);
  return { lower: 1 - upper, upper, slope };
}

/** Σ x^k / ((a + 1)…(a + k)) (Abramowitz & Stegun 6.5.29). */
function gammaSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * converged; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

/** Continued fraction of the upper incomplete gamma function by modified Lentz (Abramowitz & Stegun 6.5.31). */
function gammaFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / nonZero(b);
  let value = d;
  for (let k = 1; ; k++) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / nonZero(numerator * d + b);
    c = nonZero(b + numerator / c);
    const step = d * c;
    value *= step;
    if (Math.abs(step - 1) <= converged) return value;
  }
}

function nonZero(value: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}

/**
 * Where a distribution on a logarithmic scale reaches given tails: Newton on the logarithm of the smaller tail, which
 * is nearly straight on this scale; bisection where a step leaves its bracket.
 *
 * @param lower probability below, strictly between 0 and 1
 * @param upper 1 − lower, given apart so that small upper tails keep their digits
 * @param start first guess on the logarithmic scale
 * @param at    the tails there; slope against the logarithmic scale
 */
export function solveTails(lower: number, upper: number, start: number, at: (v: number) => Tails): number {
  const byLower = lower <= upper;
  let low = -Infinity;
  let high = Infinity;
  let reach = 4;
  for (let v = start; ; reach *= 2) {
    const tails = at(v);
    const excess = byLower ? Math.log(tails.lower / lower) : Math.log(upper / tails.upper);
    if (excess > 0) high = v;
    else low = v;
    const step = (excess * (byLower ? tails.lower : tails.upper)) / tails.slope;
    const next = bracketed(v - Math.max(-reach, Math.min(reach, step)), low, high, reach);
    if (Math.abs(next - v) <= 1e-14 * Math.max(1, Math.abs(v))) return next;
    v = next;
  }
}

/** The next place itself where it lies inside its bracket; else the middle, or a reach beyond the only limit known. */
function bracketed(next: number, low: number, high: number, reach: number): number {
  if (next > low && next < high) return next;
  if (low === -Infinity) return high - reach;
  return high === Infinity ? low + reach : (low + high) / 2;
}
