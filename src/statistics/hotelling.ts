import { type Covariance, crossProducts, squaredDistance } from './ellipse.js';
import { expectFinite, expectParallel, expectPositive, expectProbability } from './expectations.js';
import { meanOf } from './moments.js';

/**
 * f with P(F > f) = p on (2, m) degrees of freedom, in closed form: (m/2)·(p^(−2/m) − 1).
 *
 * @throws {RangeError} unless m > 0 and 0 ≤ p ≤ 1
 * @source optics page section 3; holds because the numerator has exactly 2 degrees
 * @example f2UpperQuantile(0.05, 10) // 4.1028
 */
export function f2UpperQuantile(p: number, m: number): number {
  expectProbability('f2UpperQuantile', 'p', p);
  expectPositive('f2UpperQuantile', 'm', m);
  return (m / 2) * Math.expm1((-2 / m) * Math.log(p));
}

/** P(F > f) on (2, m) degrees of freedom, in closed form: (1 + 2f/m)^(−m/2). @throws {RangeError} unless f ≥ 0, m > 0 */
export function f2Upper(f: number, m: number): number {
  if (!(f >= 0)) throw new RangeError(`f2Upper: f is ${f}; expected 0 or above`);
  expectPositive('f2Upper', 'm', m);
  return Math.exp((-m / 2) * Math.log1p((2 * f) / m));
}

/** Hotelling's test of a mean or difference in the plane. */
export interface Hotelling {
  /** T². */
  t2: number;
  /** F on (2, df2) degrees of freedom. */
  f: number;
  df2: number;
  p: number;
}

/** T² on ν degrees of freedom as F on (2, ν − 1): F = (ν − 1)/(2ν)·T². */
export function hotellingOf(t2: number, nu: number): Hotelling {
  const f = ((nu - 1) / (2 * nu)) * t2;
  return { t2, f, df2: nu - 1, p: f2Upper(f, nu - 1) };
}

/** k of the region v′V⁻¹v ≤ k that belongs to `hotellingOf`: 2ν/(ν − 1)·F(2, ν − 1). */
export function hotellingScale(confidence: number, nu: number): number {
  return ((2 * nu) / (nu - 1)) * f2UpperQuantile(1 - confidence, nu - 1);
}

/**
 * One-sample Hotelling test, textbook form: every point independent.
 *
 * @param ax, ay the mean under the hypothesis
 * @throws {RangeError} below 3 points, at values not finite, or where all points lie on one line
 * @source Johnson RA, Wichern DW. Applied multivariate statistical analysis, section 5.2
 * @example hotellingOneSample(Float64Array.of(6, 10, 8), Float64Array.of(9, 6, 3), 9, 5).t2 // 7/9
 */
export function hotellingOneSample(x: Float64Array, y: Float64Array, ax: number, ay: number): Hotelling {
  const { n, meanX, meanY, products } = moments('hotellingOneSample', x, y, 3);
  const ofMean = scaled(products, 1 / (n - 1) / n);
  return hotellingOf(squaredDistance(meanX - ax, meanY - ay, ofMean), n - 1);
}

/**
 * Paired Hotelling test, textbook form: the differences second − first against zero.
 *
 * @throws {RangeError} as `hotellingOneSample`
 * @source Johnson RA, Wichern DW, section 6.2
 */
export function hotellingPaired(
  first: { x: Float64Array; y: Float64Array },
  second: { x: Float64Array; y: Float64Array },
): Hotelling {
  expectParallel('hotellingPaired', first.x, second.x);
  expectParallel('hotellingPaired', first.y, second.y);
  const x = second.x.map((value, i) => value - (first.x[i] as number));
  const y = second.y.map((value, i) => value - (first.y[i] as number));
  return hotellingOneSample(x, y, 0, 0);
}

/**
 * Two-sample Hotelling test with pooled covariance, textbook form: every point independent.
 *
 * @throws {RangeError} below 2 points a sample, below 4 in all, or where the pooled covariance is degenerate
 * @source Johnson RA, Wichern DW, section 6.3
 */
export function hotellingTwoSample(
  first: { x: Float64Array; y: Float64Array },
  second: { x: Float64Array; y: Float64Array },
): Hotelling {
  const a = moments('hotellingTwoSample', first.x, first.y, 2);
  const b = moments('hotellingTwoSample', second.x, second.y, 2);
  const nu = a.n + b.n - 2;
  const factor = (1 / a.n + 1 / b.n) / nu;
  const { xx, xy, yy } = b.products;
  const sum = { xx: a.products.xx + xx, xy: a.products.xy + xy, yy: a.products.yy + yy };
  return hotellingOf(squaredDistance(a.meanX - b.meanX, a.meanY - b.meanY, scaled(sum, factor)), nu);
}

function moments(caller: string, x: Float64Array, y: Float64Array, fewest: number) {
  expectParallel(caller, x, y);
  expectFinite(caller, x);
  expectFinite(caller, y);
  if (x.length < fewest) throw new RangeError(`${caller}: ${x.length} points; expected ${fewest} or more`);
  const meanX = meanOf(x) as number;
  const meanY = meanOf(y) as number;
  return { n: x.length, meanX, meanY, products: crossProducts(x, y, meanX, meanY, 1) };
}

function scaled({ xx, xy, yy }: Covariance, factor: number): Covariance {
  return { xx: xx * factor, xy: xy * factor, yy: yy * factor };
}
