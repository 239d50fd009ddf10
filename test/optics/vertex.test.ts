import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cornealCylinder,
  cornealEquivalent,
  cornealPlanePower,
  cornealVectorX,
  cornealVectorY,
  revertexedEquivalent,
  revertexedPower,
  spectaclePlanePower,
} from '../../src/optics/vertex.js';
import { examples } from './reference.js';

describe('vertex conversion, against vector-examples.json (R 4.2.2)', () => {
  it.each(examples.vertex_spectacle_to_cornea)('$sphere $cyl × $axis at $vertex_mm mm', (example) => {
    const { sphere, cyl, axis, vertex_mm: vertex } = example;
    expect(cornealPlanePower(sphere, vertex)).toBeCloseTo(example.sphere_c, 10);
    expect(cornealCylinder(sphere, cyl, vertex)).toBeCloseTo(example.cyl_c, 10);
    expect(cornealEquivalent(sphere, cyl, vertex)).toBeCloseTo(example.M_c, 10);
    expect(cornealVectorX(sphere, cyl, axis, vertex)).toBeCloseTo(-2 * example.J0_c, 10);
    expect(cornealVectorY(sphere, cyl, axis, vertex)).toBeCloseTo(-2 * example.J45_c, 10);
    const back = spectaclePlanePower(cornealPlanePower(sphere, vertex), vertex);
    expect(back).toBeCloseTo(example.back_to_spectacle_sphere, 10);
  });
});

// By hand: −10/(1 + 0.12), 10/(1 − 0.12), 12/(1 − 0.144). Ophthalmic tables print −8.93, +11.36, +14.02 (from memory).
it.each([
  [-10, -8.9286],
  [10, 11.3636],
  [12, 14.0187],
])('moves %d D at 12 mm to %d D at the cornea', (spectacle, cornea) => {
  expect(cornealPlanePower(spectacle, 12)).toBeCloseTo(cornea, 4);
});

// By hand: −5/1.06 = −4.71698, −8/1.096 = −7.29927; their difference −2.58229 and mean −6.00813. The equivalent moved as
// one number would give −6.5/1.078 = −6.0297.
it('moves −5.00 −3.00 × 180 by its meridians', () => {
  expect(cornealPlanePower(-5, 12)).toBeCloseTo(-4.717, 4);
  expect(cornealCylinder(-5, -3, 12)).toBeCloseTo(-2.5823, 4);
  expect(cornealEquivalent(-5, -3, 12)).toBeCloseTo(-6.0081, 4);
  expect(cornealPlanePower(-6.5, 12)).toBeCloseTo(-6.03, 2);
});

it('goes there and back along every meridian', () => {
  const powers = fc.double({ min: -30, max: 30, noNaN: true });
  fc.assert(
    fc.property(powers, fc.double({ min: 0, max: 20, noNaN: true }), (power, vertex) => {
      expect(spectaclePlanePower(cornealPlanePower(power, vertex), vertex)).toBeCloseTo(power, 9);
    }),
  );
});

it('finds the same vector in both notations', () => {
  const eighths = fc.integer({ min: -96, max: 96 }).map((eighth) => eighth / 8);
  fc.assert(
    fc.property(eighths, eighths, fc.integer({ min: 1, max: 180 }), (sphere, cylinder, axis) => {
      const plus = cornealVectorX(sphere + cylinder, -cylinder, axis + 90, 12);
      expect(cornealVectorX(sphere, cylinder, axis, 12)).toBeCloseTo(plus, 9);
      const plusY = cornealVectorY(sphere + cylinder, -cylinder, axis + 90, 12);
      expect(cornealVectorY(sphere, cylinder, axis, 12)).toBeCloseTo(plusY, 9);
    }),
  );
});

// −8/(1 + 0.112) = −7.19424; /(1 − 0.0863309) = −7.87402. The other meridian −10.5 → −9.15432 → −10.28404.
it('restates a refraction found at 14 mm for 12 mm', () => {
  expect(revertexedPower(-8, 14, 12)).toBeCloseTo(-7.87402, 5);
  expect(revertexedEquivalent(-8, -2.5, 14, 12)).toBeCloseTo((-7.87402 - 10.28404) / 2, 5);
  expect(revertexedPower(-8.1, 12, 12)).toBe(-8.1);
  expect(revertexedEquivalent(-8.1, -2.3, 12, 12)).toBe(-8.1 - 1.15);
});

it('has no power where the lens focuses before the cornea', () => {
  expect(cornealPlanePower(1000 / 12, 12)).toBeNaN();
  expect(cornealPlanePower(90, 12)).toBeNaN();
  expect(spectaclePlanePower(-90, 12)).toBeNaN();
  expect(cornealPlanePower(Number.NaN, 12)).toBeNaN();
});

it('judges a blank axis by the recorded cylinder, whichever size it has at the cornea', () => {
  expect(cornealVectorX(12, 0.009, Number.NaN, 14)).toBe(0);
  expect(cornealVectorY(12, 0.009, Number.NaN, 14)).toBe(0);
  expect(cornealVectorX(-1, -0.5, Number.NaN, 12)).toBeNaN();
  expect(cornealVectorY(-1, -0.5, Number.NaN, 12)).toBeNaN();
});
