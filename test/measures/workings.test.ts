// Every working that `trace` prints is arithmetic: worked out here by itself, it gives what the measure's function gives.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { measureRegistry } from '../../src/measures/index.js';
import type { Measure } from '../../src/records/measure.js';
import { working } from '../../src/trace/working.js';
import { calculated } from '../trace/calculator.js';

const registry = measureRegistry(['second']);

function numbersLike(input: string): fc.Arbitrary<number> {
  if (input === 'treatment.target_is_predicted') return fc.constantFrom(0, 1);
  const [min, max] = range(input);
  return fc.double({ min, max, noNaN: true });
}

/** Numbers as an eye has them, by the name of the input. */
function range(input: string): readonly [number, number] {
  if (/vertex/.test(input)) return [0, 16];
  if (/axis|Axis/.test(input)) return [1, 180];
  if (/^(flat|steep)@/.test(input)) return [38, 48];
  if (/length/.test(input)) return [21, 28];
  if (/position/.test(input)) return [4, 6.5];
  if (/^lens_power$/.test(input)) return [5, 30];
  if (/ratio/.test(input)) return [1.2, 1.7];
  if (/_x$|_y$|^sphere@|_se|equivalent|error/.test(input)) return [-4, 4];
  return [0.3, 4];
}

const expectSame = (found: number, wanted: number, unit: string, text: string): void => {
  const gap = Math.abs(found - wanted);
  expect(unit === 'deg' ? Math.min(gap % 180, 180 - (gap % 180)) : gap, text).toBeLessThan(1e-7);
};

const worked = registry.filter((measure) => measure.worked !== undefined);

it.each(worked.map((measure) => [measure.name, measure] as const))('%s', (_, measure) => {
  const numbers = measure.inputs.map(numbersLike);
  let met = 0;
  fc.assert(
    fc.property(fc.tuple(...numbers), (inputs) => {
      const value = measure.of(...inputs);
      if (Number.isNaN(value)) return;
      const text = working(measure, inputs, plainText) as string;
      // A vector of nothing has no meridian to work with.
      if (text.includes('none')) return;
      met++;
      expectSame(calculated(text), value, measure.unit, text);
    }),
    { seed: 5, numRuns: 60 },
  );
  expect(met).toBeGreaterThan(5);
});

function plainText(value: number): string {
  return Number.isNaN(value) ? 'none' : value.toExponential(16).replace(/^-/, '−');
}

const named = (name: string): Measure => registry.find((measure) => measure.name === name) as Measure;
const text = (value: number): string => (Number.isNaN(value) ? 'none' : String(value).replace('-', '−'));

it('works by the way the eye came: another working where a value is given, declared or blank', () => {
  const residual = (inputs: readonly number[]) => working(named('predicted_residual_x'), inputs, text);
  const none = Number.NaN;
  expect(residual([-0.5, 90, -0.25, 0, none, none, none, 1])).toBe('−0.5 × cos(2 × 90°)');
  expect(residual([0.5, 90, -0.25, 12, none, none, none, 1])).toBe(
    '((−0.25 + 0.5 / 2) / (1 − 12 / 1000 × (−0.25 + 0.5 / 2)) − (−0.25 − 0.5 / 2) / (1 − 12 / 1000 × (−0.25 − 0.5 / 2))) × cos(2 × 90°)',
  );
  expect(residual([none, none, none, 0, -1.2, 100, 0.3, 0])).toBe('−1.2 − 0.3 × cos(2 × 100°)');
  const atCornea = named('lens_cylinder_at_cornea');
  expect(working(atCornea, [21, 1.5, 23.5, 43, none, 1.46], text)).toBe('1.5 / 1.46');
  expect(working(named('refractive_cylinder_after_y'), [0, none], text)).toBe('0 × 0');
});

it('has a working for every quantity of astigmatism, but for the position that is solved for', () => {
  const without = registry.filter(
    ({ family, worked: has, inputs, role }) =>
      ['astigmatism', 'cornea', 'toric'].includes(family) && !has && inputs.length > 0 && role !== 'follow-up',
  );
  expect(without.map(({ name }) => name)).toEqual(['effective_lens_position']);
});

it('refuses a name that is no input', () => {
  expect(() => working({ inputs: ['a'], worked: '{b}' }, [1], text)).toThrow('working: {b}; expected one of a');
});
