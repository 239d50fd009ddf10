import { tTwoSided } from './distributions.js';
import { expectFinite, expectParallel } from './expectations.js';
import { meanOf } from './moments.js';

/** Test of two correlated variances. */
export interface MorganPitman {
  slope: number;
  standardError: number;
  t: number;
  df: number;
  p: number;
}

/**
 * Morgan–Pitman test of the spread of two measurements of the same eyes with HC4 standard error: least squares of
 * x − y on x + y; equal variances have slope 0. One eye a patient.
 *
 * @returns undefined below 3 eyes, or where sums or differences do not vary
 * @throws {RangeError} at a value not finite, or columns of two lengths
 * @source Morgan WA, Pitman EJG. Biometrika 1939;31:9–12, 13–19; HC4: Cribari-Neto F. Comput Stat Data Anal
 * 2004;45:215–233; use: Wilcox RR. J Stat Distrib Appl 2015
 * @example morganPitman(errorsOfOneFormula, errorsOfAnother)?.p
 */
export function morganPitman(x: Float64Array, y: Float64Array): MorganPitman | undefined {
  expectParallel('morganPitman', x, y);
  expectFinite('morganPitman', x);
  expectFinite('morganPitman', y);
  const n = x.length;
  if (n < 3) return undefined;
  const sum = x.map((value, i) => value + (y[i] as number));
  const difference = x.map((value, i) => value - (y[i] as number));
  const u = centred(sum);
  const v = centred(difference);
  const uu = dot(u, u);
  if (uu === 0 || dot(v, v) === 0) return undefined;
  const slope = dot(u, v) / uu;
  const standardError = Math.sqrt(hc4(u, v, slope, uu));
  if (standardError === 0) return undefined;
  const t = slope / standardError;
  return { slope, standardError, t, df: n - 2, p: tTwoSided(t, n - 2) };
}

/** HC4 variance of the slope: residuals weigh e²/(1 − h)^min(4, h/mean h), mean h = 2/n. */
function hc4(u: Float64Array, v: Float64Array, slope: number, uu: number): number {
  const n = u.length;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const at = u[i] as number;
    const residual = (v[i] as number) - slope * at;
    const leverage = 1 / n + (at * at) / uu;
    sum += (at * residual) ** 2 / (1 - leverage) ** Math.min(4, (n * leverage) / 2);
  }
  return sum / (uu * uu);
}

function centred(values: Float64Array): Float64Array {
  const centre = meanOf(values) as number;
  return values.map((value) => value - centre);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
