import { millionths } from '../units.js';

/**
 * Names of the bands between edges: an edge belongs to the band above it, the last edge to the band below.
 *
 * @param edges  ascending
 * @example bandNames([22, 24.5, 26]) // ['(-,22)', '[22,24.5)', '[24.5,26]', '(26,-)']
 */
export function bandNames(edges: readonly number[]): readonly string[] {
  const last = edges.length - 1;
  return edges.flatMap((edge, i) => {
    const below = i === 0 ? [`(-,${edge})`] : [];
    const above = i === last ? `(${edge},-)` : `[${edge},${edges[i + 1]}${i + 1 === last ? ']' : ')'}`;
    return [...below, above];
  });
}

/**
 * Which band a value falls into.
 *
 * @returns index into `bandNames(edges)`; −1 where the value is missing
 */
export function bandOf(value: number, edges: readonly number[]): number {
  if (Number.isNaN(value)) return -1;
  const last = edges.length - 1;
  const passes = (edge: number, i: number): boolean =>
    i === last ? millionths(value) > millionths(edge) : millionths(value) >= millionths(edge);
  return edges.filter(passes).length;
}
