import { round } from '../format/round.js';

/** Eyes at one place of the doubled-angle plane. */
export interface Place {
  x: number;
  y: number;
  eyes: number;
}

/** Marks of more eyes than this are counts in cells. */
export const mostMarks = 2000;

/** Cells across the plane at most, each way. */
const mostCells = 40;

function counted(x: ArrayLike<number>, y: ArrayLike<number>, at: (value: number) => number): readonly Place[] {
  const places = new Map<string, Place>();
  for (let i = 0; i < x.length; i += 1) {
    const place = { x: at(x[i] as number), y: at(y[i] as number), eyes: 0 };
    const key = `${place.x} ${place.y}`;
    places.set(key, { ...place, eyes: (places.get(key)?.eyes ?? 0) + 1 });
  }
  return [...places.values()].sort((a, b) => b.eyes - a.eyes || a.x - b.x || a.y - b.y);
}

/**
 * Eyes by the place they are drawn at, rounded to 0.01 D and in the order of the places, so that nothing tells which
 * eye came first in any file; places with more eyes come first, to be drawn beneath.
 */
export function placesOf(x: ArrayLike<number>, y: ArrayLike<number>): readonly Place[] {
  return counted(x, y, (value) => round(value, 2));
}

/**
 * Eyes counted in square cells, each named by its middle.
 *
 * @param radius  of the plane, dioptres: nothing lies further out
 * @param least   cells with fewer eyes are left out
 */
export function cellsOf(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  radius: number,
  least: number,
): { cells: readonly Place[]; size: number } {
  const size = (2 * radius) / mostCells;
  const middle = (value: number): number => {
    const cell = Math.min(mostCells - 1, Math.floor((value + radius) / size));
    return round((cell + 0.5) * size - radius, 6);
  };
  return { cells: counted(x, y, middle).filter(({ eyes }) => eyes >= least), size };
}
