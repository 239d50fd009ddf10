import { expect, it } from 'vitest';
import { millionths } from '../src/units.js';

// Found by exhaustive search over decimals in binary64: the naive comparison `<=` fails on each.
it.each([
  [0.54 - 0.29, 0.25],
  [0.55 - 0.3, 0.25],
  [Math.abs(0.75 - 0.17 - 1.08), 0.5],
  [Math.abs(1 - 0.17 - 1.33), 0.5],
  [-3.98 - -4.48, 0.5],
])('%d counts as the decimal %d that it stands for', (computed, decimal) => {
  expect(computed <= decimal).toBe(false);
  expect(millionths(computed)).toBe(millionths(decimal));
});

it('keeps apart what differs by more than half a millionth', () => {
  expect(millionths(0.504)).toBe(504_000);
  expect(millionths(0.500001)).not.toBe(millionths(0.5));
});

it('treats both signs alike, halves going away from zero', () => {
  expect(millionths(-2.5e-6)).toBe(-3);
  expect(millionths(2.5e-6)).toBe(3);
  expect(millionths(Number.NaN)).toBeNaN();
});
