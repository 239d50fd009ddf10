/**
 * Powers as symmetrical 2 × 2 matrices: every meridian of a cornea, a lens or a correction at once.
 *
 * The power along the meridian t is n·F·n with n = (cos t, sin t). Powers that stand at one place add
 * as matrices; moving along the line of sight is a matrix inverse. This is the sample's own road: it
 * uses no doubled angle, no transposition and nothing of the project it tests.
 *
 * @source Long WF. Optom Vis Sci 1976;53:40–45 and Keating MP. Optom Vis Sci 1980;57:393–401, from memory
 */
export interface PowerMatrix {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Two principal powers, in dioptres, and the meridian of the greater one, 0 up to 180 degrees. */
export interface Principal {
  readonly least: number;
  readonly greatest: number;
  readonly meridianOfGreatest: number;
}

const DEGREE = Math.PI / 180;

/** Equal power in every meridian, plus an excess of `horizontal` D of meridian 0 over 90 and `oblique` D of 45 over 135. */
export function matrix(mean: number, horizontal = 0, oblique = 0): PowerMatrix {
  return { xx: mean + horizontal / 2, xy: oblique / 2, yy: mean - horizontal / 2 };
}

/** `flat` everywhere, and `steep` along one meridian (degrees). */
export function fromPrincipal(flat: number, steep: number, meridian: number): PowerMatrix {
  const c = Math.cos(meridian * DEGREE);
  const s = Math.sin(meridian * DEGREE);
  const excess = steep - flat;
  return { xx: flat + excess * c * c, xy: excess * c * s, yy: flat + excess * s * s };
}

/** Sum of powers at one place, the second times `factor`. */
export function plus(a: PowerMatrix, b: PowerMatrix, factor = 1): PowerMatrix {
  return { xx: a.xx + factor * b.xx, xy: a.xy + factor * b.xy, yy: a.yy + factor * b.yy };
}

/** Power along a meridian, dioptres. */
export function along(f: PowerMatrix, meridian: number): number {
  const c = Math.cos(meridian * DEGREE);
  const s = Math.sin(meridian * DEGREE);
  return f.xx * c * c + 2 * f.xy * c * s + f.yy * s * s;
}

/** Mean power, dioptres: half the trace. */
export function meanPower(f: PowerMatrix): number {
  return (f.xx + f.yy) / 2;
}

/** How much more power meridian `at` has than the one at right angles to it, dioptres. */
export function excess(f: PowerMatrix, at: number): number {
  return along(f, at) - along(f, at + 90);
}

/** The matrix seen in a frame turned by `angle` degrees counter-clockwise, or back with a negative angle. */
export function turned(f: PowerMatrix, angle: number): PowerMatrix {
  return matrix(meanPower(f), excess(f, -angle), excess(f, 45 - angle));
}

/** Principal powers by eigenvalues, the meridian by the eigenvector (xy, greatest − xx). */
export function principal(f: PowerMatrix): Principal {
  const mean = meanPower(f);
  const half = Math.sqrt(((f.xx - f.yy) / 2) ** 2 + f.xy ** 2);
  const greatest = mean + half;
  const straight = Math.abs(f.xy) < 1e-12;
  const angle = straight ? (f.xx >= f.yy ? 0 : 90) : Math.atan2(greatest - f.xx, f.xy) / DEGREE;
  return { least: mean - half, greatest, meridianOfGreatest: (angle + 360) % 180 };
}

/** F(I + dF)⁻¹: what a correction of `f` at the cornea must be `distance` mm in front of it; a negative distance goes back. */
export function movedForward(f: PowerMatrix, distance: number): PowerMatrix {
  const d = distance / 1000;
  const xx = 1 + d * f.xx;
  const xy = d * f.xy;
  const yy = 1 + d * f.yy;
  const determinant = xx * yy - xy * xy;
  return {
    xx: (f.xx * yy - f.xy * xy) / determinant,
    xy: (f.xy * xx - f.xx * xy) / determinant,
    yy: (f.yy * xx - f.xy * xy) / determinant,
  };
}
