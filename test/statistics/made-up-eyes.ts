/** Patients 0 … n − 1, one eye each. */
export function single(n: number): Int32Array {
  return Int32Array.from({ length: n }, (_, i) => i);
}

/** n eyes of which the first x have the property. */
export function hitsOf(x: number, n: number): Uint8Array {
  return Uint8Array.from({ length: n }, (_, i) => (i < x ? 1 : 0));
}

/**
 * The 20 prediction errors of the optics page, section 5. Their statistics are ids 5.* of
 * shared/reference/optics-checks.csv, computed in R and again in Python.
 */
export const opticsErrors = Float64Array.of(
  ...[-0.5, 0.25, 0.12, -0.31, 0.54 - 0.29, -0.87, 1.0, 0.05, -0.02, 0.37],
  ...[-0.62, 0.75, 0.18, -0.44, 0.5, -1.37, 0.08, -0.19, 2.0, 0.29],
);
