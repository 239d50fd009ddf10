import fc from 'fast-check';
import { expect, it } from 'vitest';
import { axisOf, wrap90, wrap180 } from '../../src/optics/axis.js';

it.each([
  [0, 180],
  [180, 180],
  [360, 180],
  [-5, 175],
  [190, 10],
  [-180, 180],
  [0.3, 0.3],
])('wraps an axis of %d to %d', (angle, wrapped) => {
  expect(wrap180(angle)).toBe(wrapped);
});

it.each([
  [5 - 175, 10],
  [175 - 5, -10],
  [90, 90],
  [-90, 90],
  [0, 0],
  [180, 0],
])('wraps a turn of %d to %d, 90 being kept and −90 not used', (difference, wrapped) => {
  expect(wrap90(difference)).toBe(wrapped);
});

it('stays in its range whatever the number of turns', () => {
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (angle) => {
      expect(wrap180(angle)).toBeGreaterThan(0);
      expect(wrap180(angle)).toBeLessThanOrEqual(180);
      expect(wrap90(angle)).toBeGreaterThan(-90);
      expect(wrap90(angle)).toBeLessThanOrEqual(90);
    }),
  );
});

// Quarter turns of the doubled plane: C cos 2φ, C sin 2φ at φ = 180, 45, 90, 135.
it.each([
  [1, 0, 180],
  [0, 1, 45],
  [-1, 0, 90],
  [0, -1, 135],
])('finds the axis of (%d, %d) at %d', (x, y, axis) => {
  expect(axisOf(x, y)).toBeCloseTo(axis, 12);
});

it('finds no axis in a vector that is only rounding', () => {
  expect(axisOf(0, 0)).toBeNaN();
  expect(axisOf(9e-10, 0)).toBeNaN();
  expect(axisOf(1.1e-9, 0)).toBe(180);
  expect(axisOf(Number.NaN, 1)).toBeNaN();
});
