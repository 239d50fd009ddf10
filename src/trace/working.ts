import { axisOf } from '../optics/axis.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import type { Measure } from '../records/measure.js';

/** What stands in braces of a working: an input, or magnitude or meridian of a vector whose components are inputs. */
function numberBehind(name: string, inputOf: (input: string) => number): number {
  const vector = /^\|(.+)\|$|^@(.+)$/.exec(name);
  if (!vector) return inputOf(name);
  const of = vector[1] ?? vector[2];
  const [x, y] = [inputOf(`${of}_x`), inputOf(`${of}_y`)];
  return vector[1] === undefined ? axisOf(x, y) : vectorMagnitude(x, y);
}

/**
 * The working of a measure with the numbers of one eye in place of its inputs. A negative number stands in brackets
 * unless nothing but an opening bracket, or nothing at all, stands before it.
 *
 * @param inputs  in the order of `measure.inputs`
 * @param text    how a number is written; NaN for a vector of zero, which has no meridian
 * @returns undefined where the measure has no working
 * @throws {RangeError} where the working names what is no input
 * @example working({ inputs: ['a', 'b'], worked: '{a} − {b}' }, [1, -2], String) // '1 − (-2)'
 */
export function working(
  { inputs, worked }: Pick<Measure, 'inputs' | 'worked'>,
  numbers: readonly number[],
  text: (value: number) => string,
): string | undefined {
  if (worked === undefined) return undefined;
  const inputOf = (name: string): number => {
    const at = inputs.indexOf(name);
    if (at < 0) throw new RangeError(`working: {${name}}; expected one of ${inputs.join(', ')}`);
    return numbers[at] as number;
  };
  const template = typeof worked === 'string' ? worked : worked(...numbers);
  return template.replace(/\{([^}]+)\}(°)?/g, (_, name: string, degree = '', at: number) => {
    const value = numberBehind(name, inputOf);
    const number = Number.isNaN(value) ? text(value) : text(value) + degree;
    const opens = at === 0 || (template[at - 1] === '(' && template[at + name.length + 2] !== ')');
    return value < 0 && !opens ? `(${number})` : number;
  });
}
