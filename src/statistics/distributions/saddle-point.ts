/**
 * Loader's saddle-point pieces: binomial and Poisson probabilities without the cancellation of log-gammas.
 *
 * @source Loader C. Fast and accurate computation of binomial probabilities. 2000 (from memory);
 * values checked on shared/reference/distributions.json
 */

/** Coefficients B(2k)/(2k(2k − 1)) of Stirling's series. */
const stirling = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/** From here on the series is exact to double precision. */
const seriesFrom = 16;

/**
 * ln Γ(a + 1) − (a + ½) ln a + a − ½ ln 2π, what Stirling's formula leaves over; a > 0.
 *
 * Small a climb to the series by δ(a) = δ(a + 1) + (a + ½) ln(1 + 1/a) − 1.
 */
function stirlingError(a: number): number {
  let climbed = 0;
  let at = a;
  for (; at < seriesFrom; at += 1) climbed += (at + 0.5) * Math.log1p(1 / at) - 1;
  let series = 0;
  for (let k = stirling.length - 1; k >= 0; k--) series = series / (at * at) + (stirling[k] as number);
  return climbed + series / at;
}

/** x ln(x/m) + m − x, never negative; x, m > 0. Close to m by its series, since the terms cancel there. */
function deviance(x: number, m: number): number {
  if (Math.abs(x - m) >= 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = (x - m) / (x + m);
  let sum = (x - m) * v;
  let term = 2 * x * v;
  for (let j = 3; ; j += 2) {
    term *= v * v;
    const next = sum + term / j;
    if (next === sum) return sum;
    sum = next;
  }
}

/** x^a · e^−x / Γ(a): the slope of the incomplete gamma function against ln x. */
export function gammaSlope(a: number, x: number): number {
  if (x === 0) return 0;
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(-stirlingError(a) - deviance(a, x));
}

/** x^a · y^b / B(a, b) with y = 1 − x: the slope of the incomplete beta function against ln(x/y). */
export function betaSlope(a: number, b: number, x: number, y: number): number {
  if (x === 0 || y === 0) return 0;
  const n = a + b;
  const exponent = stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n * x) - deviance(b, n * y);
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(exponent);
}
