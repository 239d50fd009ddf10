import type { Results } from '../results/index.js';

/** An ellipse in the doubled-angle plane. */
export interface Ellipse {
  x: number;
  y: number;
  /** Semi-axes, dioptres. */
  major: number;
  minor: number;
  /** Plot angle of the longer axis, degrees from +x; not an eye's axis, and never halved. */
  angle: number;
}

/**
 * The region of a centroid or of the next eye, as results rows give it.
 *
 * @param name  'centroid_ellipse' or 'data_ellipse'
 * @returns undefined where one of its numbers is not estimable
 */
export function ellipseOf(results: Results, measure: string, group: string, name: string): Ellipse | undefined {
  const value = (statistic: string): number => results.get(measure, group, statistic).value ?? Number.NaN;
  const [x, y] = [value('centroid_x'), value('centroid_y')];
  const [major, minor] = [value(`${name}_major`), value(`${name}_minor`)];
  // A circle, and a region without extent, may have no angle; any will do.
  const angle = results.get(measure, group, `${name}_angle`).value ?? 0;
  return Number.isFinite(x + y + major + minor) ? { x, y, major, minor, angle } : undefined;
}

/** How far it reaches from its middle along x and along y, dioptres. */
export function reachOf({ major, minor, angle }: Ellipse): { x: number; y: number } {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  return {
    x: Math.sqrt((major * cos) ** 2 + (minor * sin) ** 2),
    y: Math.sqrt((major * sin) ** 2 + (minor * cos) ** 2),
  };
}

const corners = 96;

/**
 * Its outline, closed.
 *
 * @example outlineOf({ x: 0, y: 0, major: 2, minor: 1, angle: 90 })[0] // { x: 0, y: 2, step: 0 }
 */
export function outlineOf({ x, y, major, minor, angle }: Ellipse): readonly { x: number; y: number; step: number }[] {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  return Array.from({ length: corners + 1 }, (_, step) => {
    const turn = (2 * Math.PI * step) / corners;
    const [along, across] = [major * Math.cos(turn), minor * Math.sin(turn)];
    return { x: x + along * cos - across * sin, y: y + along * sin + across * cos, step };
  });
}
