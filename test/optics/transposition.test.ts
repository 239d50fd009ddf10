import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerVector } from '../../src/optics/power-vector.js';
import { plusAxis, plusSphere, toMinusCylinder, toPlusCylinder, transpose } from '../../src/optics/transposition.js';
import { axisGap, examples, orNaN } from './reference.js';

describe('transposition, against vector-examples.json (power matrix and complex numbers, R 4.2.2)', () => {
  it.each(examples.representation)('$sphere $cyl × $axis', ({ sphere, cyl, axis, minus_cyl, plus_cyl }) => {
    const written = { sphere, cylinder: cyl, axis };
    const minus = toMinusCylinder(written);
    expect(minus.sphere).toBeCloseTo(minus_cyl.S, 12);
    expect(minus.cylinder).toBeCloseTo(minus_cyl.C, 12);
    expect(axisGap(minus.axis, orNaN(minus_cyl.A))).toBeLessThan(1e-9);
    const plus = toPlusCylinder(written);
    expect(plus.sphere).toBeCloseTo(plus_cyl.S, 12);
    expect(plus.cylinder).toBeCloseTo(plus_cyl.C, 12);
    expect(axisGap(plus.axis, orNaN(plus_cyl.A))).toBeLessThan(1e-9);
    expect([plusSphere(sphere, cyl), plusAxis(cyl, axis)]).toEqual([plus.sphere, plus.axis]);
  });
});

const eighths = fc.integer({ min: -160, max: 160 }).map((eighth) => eighth / 8);
const refractions = fc.record({ sphere: eighths, cylinder: eighths, axis: fc.integer({ min: 1, max: 180 }) });

it('changes the notation and not the lens', () => {
  fc.assert(
    fc.property(refractions, (written) => {
      const lens = powerVector(written);
      for (const other of [transpose(written), toPlusCylinder(written), toMinusCylinder(written)]) {
        expect(powerVector(other).m).toBe(lens.m);
        expect(powerVector(other).j0).toBeCloseTo(lens.j0, 12);
        expect(powerVector(other).j45).toBeCloseTo(lens.j45, 12);
      }
    }),
  );
});

it('returns to what was written when transposed twice', () => {
  fc.assert(
    fc.property(refractions, (written) => {
      const twice = transpose(transpose(written));
      expect(twice).toEqual({
        ...written,
        axis: written.cylinder === 0 ? Number.NaN : written.axis,
        cylinder: written.cylinder + 0,
      });
    }),
  );
});

it('gives a zero cylinder no axis and no sign', () => {
  const plano = transpose({ sphere: -1, cylinder: 0, axis: 37 });
  expect(Object.is(plano.cylinder, 0)).toBe(true);
  expect(plano.axis).toBeNaN();
  expect(plusAxis(0, 90)).toBeNaN();
  expect(plusAxis(-0.5, Number.NaN)).toBeNaN();
  expect(plusSphere(-1, Number.NaN)).toBeNaN();
});
