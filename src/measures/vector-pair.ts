import type { Measure } from '../records/measure.js';

/** One component of a vector, made from the inputs of that component. */
export interface Component {
  inputs: readonly string[];
  formula: string;
  worked: NonNullable<Measure['worked']>;
  of(...inputs: number[]): number;
}

/** What both components of a vector share. */
export type AboutVector = Omit<Measure, 'name' | 'kind' | 'vector' | 'inputs' | 'formula' | 'worked' | 'of'>;

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

/** The same formula for x and y: inputs that end in `_x` become `_y`, in the working too. */
export function likeComponents(
  inputs: readonly string[],
  formula: string,
  worked: NonNullable<Measure['worked']>,
  of: (...inputs: number[]) => number,
): readonly [x: Component, y: Component] {
  const second = inputs.map((input) => input.replace(/_x$/, '_y'));
  return [
    { inputs, formula, worked, of },
    { inputs: second, formula, worked: secondWorking(worked), of },
  ];
}

/** A working of first components as one of second components. */
export function secondWorking(worked: NonNullable<Measure['worked']>): NonNullable<Measure['worked']> {
  const second = (text: string): string => text.replace(/_x\}/g, '_y}').replaceAll('cos(', 'sin(');
  return typeof worked === 'string' ? second(worked) : (...inputs) => second(worked(...inputs));
}
