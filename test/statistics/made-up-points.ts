/** Points of one cohort in a plane. */
export interface Cloud {
  x: Float64Array;
  y: Float64Array;
}

/** Plus cylinder × axis, or magnitude at steep meridian, as points of the doubled-angle plane. */
export function cloud(pairs: readonly (readonly [cylinder: number, axis: number])[]): Cloud {
  const doubled = (axis: number): number => (axis * Math.PI) / 90;
  return {
    x: Float64Array.from(pairs, ([cylinder, axis]) => cylinder * Math.cos(doubled(axis))),
    y: Float64Array.from(pairs, ([cylinder, axis]) => cylinder * Math.sin(doubled(axis))),
  };
}

/** Points as they stand. */
export function pointsOf(points: readonly (readonly [x: number, y: number])[]): Cloud {
  return { x: Float64Array.from(points, ([x]) => x), y: Float64Array.from(points, ([, y]) => y) };
}

/**
 * Data A of the optics page, section 3: plus cylinder × axis of right and left eyes. Its statistics are ids 3.* of
 * shared/reference/optics-checks.csv, computed in R and again in Python.
 */
export const dataA = cloud([
  ...([
    [0.5, 10],
    [0.75, 172],
    [0.25, 95],
    [1.0, 160],
    [0, 0],
    [0.62, 25],
  ] as const),
  ...([
    [0.38, 150],
    [0.87, 5],
    [0.5, 178],
    [0.25, 88],
    [1.12, 170],
    [0.75, 20],
  ] as const),
]);
/** Places of the left eyes in data A. */
export const leftOfA = [1, 3, 6, 8, 9, 11];
