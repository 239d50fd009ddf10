import { describe, expect, it } from 'vitest';
import { doubleAngleX, doubleAngleY } from '../../src/optics/double-angle.js';
import { fromPowerVector, j0, j45, powerVector } from '../../src/optics/power-vector.js';
import { toPlusCylinder } from '../../src/optics/transposition.js';
import { axisGap, examples, orNaN } from './reference.js';

describe('power vectors, against vector-examples.json (power matrix and complex numbers, R 4.2.2)', () => {
  it.each(examples.representation)('$sphere $cyl × $axis', ({ sphere, cyl, axis, M, J0, J45, matrix, minus_cyl }) => {
    const vector = powerVector({ sphere, cylinder: cyl, axis });
    expect(vector.m).toBeCloseTo(M, 12);
    expect(vector.j0).toBeCloseTo(J0, 12);
    expect(vector.j45).toBeCloseTo(J45, 12);
    // Long 1976: the power matrix is [[M + J0, J45], [J45, M − J0]].
    expect(vector.m + vector.j0).toBeCloseTo(matrix.f11, 12);
    expect(vector.m - vector.j0).toBeCloseTo(matrix.f22, 12);
    expect(vector.j45).toBeCloseTo(matrix.f12, 12);
    const back = fromPowerVector(vector);
    expect(back.sphere).toBeCloseTo(minus_cyl.S, 9);
    expect(back.cylinder).toBeCloseTo(minus_cyl.C, 9);
    expect(axisGap(back.axis, orNaN(minus_cyl.A))).toBeLessThan(1e-7);
  });

  it.each(examples.obliquely_crossed)(
    'two lenses in contact, $a and $b',
    ({ a, b, minus_cyl, plus_cyl, M, J0, J45 }) => {
      const [first, second] = [a, b].map(([sphere, cylinder, axis]) => powerVector({ sphere, cylinder, axis }));
      if (!first || !second) throw new Error('two lenses');
      const sum = { m: first.m + second.m, j0: first.j0 + second.j0, j45: first.j45 + second.j45 };
      expect(sum.m).toBeCloseTo(M, 12);
      expect(sum.j0).toBeCloseTo(J0, 12);
      expect(sum.j45).toBeCloseTo(J45, 12);
      const minus = fromPowerVector(sum);
      expect(minus.sphere).toBeCloseTo(minus_cyl.S, 9);
      expect(minus.cylinder).toBeCloseTo(minus_cyl.C, 9);
      expect(axisGap(minus.axis, orNaN(minus_cyl.A))).toBeLessThan(1e-7);
      const plus = toPlusCylinder(minus);
      expect(plus.sphere).toBeCloseTo(plus_cyl.S, 9);
      expect(plus.cylinder).toBeCloseTo(plus_cyl.C, 9);
      expect(axisGap(plus.axis, orNaN(plus_cyl.A))).toBeLessThan(1e-7);
    },
  );
});

// Signs by definition of Thibos and Horner: −2.00 −1.00 × 180 has J0 = +0.50; at 90 −0.50; × 45 J45 = +0.50; × 135 −0.50.
it.each([
  [180, 0.5, 0],
  [90, -0.5, 0],
  [45, 0, 0.5],
  [135, 0, -0.5],
])('has the signs of Thibos and Horner for −1.00 × %d', (axis, expectedJ0, expectedJ45) => {
  expect(j0(-1, axis)).toBeCloseTo(expectedJ0, 12);
  expect(j45(-1, axis)).toBeCloseTo(expectedJ45, 12);
});

// −3.25 −1.75 × 20: M −4.1250, J0 0.6703, J45 0.5624 by the definition; cos 40° = 0.766044, sin 40° = 0.642788.
it('reproduces −3.25 −1.75 × 20 and returns to it', () => {
  const vector = powerVector({ sphere: -3.25, cylinder: -1.75, axis: 20 });
  expect(vector.m).toBe(-4.125);
  expect(vector.j0).toBeCloseTo(0.875 * 0.766044, 5);
  expect(vector.j45).toBeCloseTo(0.875 * 0.642788, 5);
  const back = fromPowerVector(vector);
  expect(back.sphere).toBeCloseTo(-3.25, 12);
  expect(back.cylinder).toBeCloseTo(-1.75, 12);
  expect(back.axis).toBeCloseTo(20, 10);
});

it('is minus half the double-angle vector: J0 = −x/2, J45 = −y/2', () => {
  expect(j0(-1.5, 20)).toBeCloseTo(-doubleAngleX(-1.5, 20) / 2, 15);
  expect(j45(-1.5, 20)).toBeCloseTo(-doubleAngleY(-1.5, 20) / 2, 15);
});
