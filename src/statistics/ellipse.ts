/** A symmetric 2 × 2 matrix: covariances of x and y. */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** An ellipse about a centre, by its semi-axes in the plotted unit. */
export interface Ellipse {
  /** Semi-axes; the minor one is 0 where all points lie on one line. */
  major: number;
  minor: number;
  /** Of the major axis, degrees counterclockwise from +x *in the plot plane*, from −90 to 90; never a clinical axis. */
  tilt: number;
}

/** A determinant below this fraction of the squared trace: the points lie on one line. */
const line = 1e-12;

/** xx·yy − xy². */
export function determinant({ xx, xy, yy }: Covariance): number {
  return xx * yy - xy * xy;
}

/** Whether a covariance has no area: all points on one line, or equal. */
export function isDegenerate(covariance: Covariance): boolean {
  return determinant(covariance) <= line * (covariance.xx + covariance.yy) ** 2;
}

/**
 * The ellipse v′·covariance⁻¹·v = k.
 *
 * Semi-axes √(k·λ), λ = (xx + yy ± √((xx − yy)² + 4·xy²))/2; tilt = ½·atan2(2·xy, xx − yy).
 *
 * @param k squared scale, such as 5.991465 for 95 % of a normal cloud
 * @source optics page section 3; Johnson RA, Wichern DW. Applied multivariate statistical analysis, chapter 5
 * @example ellipse({ xx: 4, xy: 0, yy: 1 }, 1) // { major: 2, minor: 1, tilt: 0 }
 */
export function ellipse(covariance: Covariance, k: number): Ellipse {
  const { xx, xy, yy } = covariance;
  const largest = (xx + yy + Math.hypot(xx - yy, 2 * xy)) / 2;
  // The product of both is the determinant: no cancellation in the smaller one.
  const smallest = isDegenerate(covariance) ? 0 : determinant(covariance) / largest;
  return {
    major: Math.sqrt(k * largest),
    minor: Math.sqrt(k * smallest),
    tilt: (Math.atan2(2 * xy, xx - yy) * 90) / Math.PI,
  };
}

/** v′·covariance⁻¹·v, the squared distance of (x, y) from 0. @throws {RangeError} where the covariance is degenerate */
export function squaredDistance(x: number, y: number, covariance: Covariance): number {
  if (isDegenerate(covariance)) throw new RangeError('squaredDistance: the covariance has no inverse');
  const { xx, xy, yy } = covariance;
  return (yy * x * x - 2 * xy * x * y + xx * y * y) / determinant(covariance);
}

/** Products of deviations of two columns, over any divisor: Σ(x − mx)², Σ(x − mx)(y − my), Σ(y − my)². */
export function crossProducts(
  x: Float64Array,
  y: Float64Array,
  meanX: number,
  meanY: number,
  divisor: number,
): Covariance {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < x.length; i++) {
    const dx = (x[i] as number) - meanX;
    const dy = (y[i] as number) - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  return { xx: xx / divisor, xy: xy / divisor, yy: yy / divisor };
}
