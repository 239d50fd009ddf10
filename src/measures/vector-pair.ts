import type { Measure } from '../records/measure.js';

/** One component of a vector, made from the inputs of that component. */
export interface Component {
  inputs: readonly string[];
  formula: string;
  of(...inputs: number[]): number;
}

/** What both components of a vector share. */
export type AboutVector = Omit<Measure, 'name' | 'kind' | 'vector' | 'inputs' | 'formula' | 'of'>;

/** A vector as the registry holds it: `<name>_x` and `<name>_y` under one name, doubled angle. */
export function vectorPair(name: string, about: AboutVector, x: Component, y: Component): readonly Measure[] {
  const component = (part: 'x' | 'y', of: Component): Measure => ({
    ...about,
    ...of,
    name: `${name}_${part}`,
    kind: 'vector',
    vector: { name, component: part },
  });
  return [component('x', x), component('y', y)];
}

/** The same formula for x and y: inputs that end in `_x` become `_y`. */
export function likeComponents(
  inputs: readonly string[],
  formula: string,
  of: (...inputs: number[]) => number,
): readonly [x: Component, y: Component] {
  const second = inputs.map((input) => input.replace(/_x$/, '_y'));
  return [
    { inputs, formula, of },
    { inputs: second, formula, of },
  ];
}
