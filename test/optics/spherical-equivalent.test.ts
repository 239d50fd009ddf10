import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sphericalEquivalent } from '../../src/optics/spherical-equivalent.js';
import { examples } from './reference.js';

it('is M of the power vector, against vector-examples.json', () => {
  for (const { sphere, cyl, M } of examples.representation) expect(sphericalEquivalent(sphere, cyl)).toBeCloseTo(M, 12);
});

it('is the same in both notations', () => {
  fc.assert(
    fc.property(fc.integer({ min: -240, max: 240 }), fc.integer({ min: -96, max: 96 }), (sphere, cylinder) => {
      const transposed = sphericalEquivalent((sphere + cylinder) / 8, -cylinder / 8);
      expect(sphericalEquivalent(sphere / 8, cylinder / 8)).toBe(transposed);
    }),
  );
});

it('does not exist without sphere or cylinder', () => {
  expect(sphericalEquivalent(Number.NaN, -1)).toBeNaN();
  expect(sphericalEquivalent(-1, Number.NaN)).toBeNaN();
});
