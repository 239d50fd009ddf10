import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisOf } from '../../src/optics/axis.js';
import { vectorMagnitude } from '../../src/optics/double-angle.js';
import {
  cornealRadius,
  keratometricPower,
  keratometricVectorX,
  keratometricVectorY,
  meridionalSteepening,
  meridionalTorque,
  powerAlongMeridian,
  powerOfMeanRadius,
  reindexedPower,
  steepMeridian,
} from '../../src/optics/keratometry.js';
import { axisGap, examples, orNaN, type Readings } from './reference.js';

function vectorOf({ k1, a1, k2, a2 }: Readings): readonly [x: number, y: number] {
  const [flat, steep] = [Math.min(k1, k2), Math.max(k1, k2)];
  const axis = steepMeridian(k1, a1, k2, a2);
  return [keratometricVectorX(flat, steep, axis), keratometricVectorY(flat, steep, axis)];
}

describe('radii, against vector-examples.json (R 4.2.2)', () => {
  it.each(examples.keratometry_radius)('radius $radius_mm mm', (example) => {
    const radius = example.radius_mm as number;
    expect(keratometricPower(radius)).toBeCloseTo(example['power_1.3375'] as number, 10);
    for (const index of [1.332, 1.3315]) {
      const power = example[`power_${index}`] as number;
      expect(keratometricPower(radius, index)).toBeCloseTo(power, 10);
      expect(cornealRadius(power, index)).toBeCloseTo(radius, 10);
      expect(reindexedPower(power, index)).toBeCloseTo(example['power_1.3375'] as number, 10);
    }
    expect(keratometricPower(radius, 1.376)).toBeCloseTo(example['power_1.376_front'] as number, 10);
  });
});

// 337.5/r: 43.2692, 42.1875, 40.1786; reference tables print 43.3, 42.2, 40.2.
it.each([
  [7.5, 45],
  [7.8, 43.2692],
  [8, 42.1875],
  [8.4, 40.1786],
])('finds %d mm to be %d D', (radius, power) => {
  expect(keratometricPower(radius)).toBeCloseTo(power, 4);
});

describe('induced astigmatism, against vector-examples.json (R 4.2.2)', () => {
  it.each(examples.sia_keratometry)('$comment', (example) => {
    const before = vectorOf(example.pre);
    const after = vectorOf(example.post);
    const [x, y] = [after[0] - before[0], after[1] - before[1]];
    expect(before[0]).toBeCloseTo(example.pre_astig.x, 10);
    expect(before[1]).toBeCloseTo(example.pre_astig.y, 10);
    expect(x).toBeCloseTo(example.sia.x, 10);
    expect(y).toBeCloseTo(example.sia.y, 10);
    expect(vectorMagnitude(x, y)).toBeCloseTo(example.sia.magnitude, 10);
    expect(axisGap(axisOf(x, y), orNaN(example.sia.steep_meridian))).toBeLessThan(1e-7);
    expect(meridionalSteepening(x, y, example.incision_meridian)).toBeCloseTo(example.polar_value_at_incision, 10);
    expect(meridionalTorque(x, y, example.incision_meridian)).toBeCloseTo(example.polar_value_at_incision_plus45, 10);
    expect(meridionalSteepening(x, y, 90)).toBeCloseTo(example.polar_90, 10);
    expect(meridionalSteepening(x, y, 135)).toBeCloseTo(example.polar_135, 10);
  });
});

// 0.6222 at 167.16 by the law of cosines on doubled angles: 1.50² + 0.95² − 2·1.50·0.95·cos 14° = 0.38715.
it('subtracts as vectors: 1.50 at 88 before, 0.95 at 95 after', () => {
  const x = keratometricVectorX(43, 43.95, 95) - keratometricVectorX(43, 44.5, 88);
  const y = keratometricVectorY(43, 43.95, 95) - keratometricVectorY(43, 44.5, 88);
  expect(vectorMagnitude(x, y)).toBeCloseTo(Math.sqrt(0.38715), 4);
  expect(axisOf(x, y)).toBeCloseTo(167.16, 2);
});

// 0.50 cos 2(80 − 180) = 0.50 cos 200° = −0.4698; 0.50 sin 2(80 − 180) = −0.50 sin 200° = +0.1710.
it('finds an induced 0.50 at 80 to flatten along an incision at 180, with torque counter-clockwise', () => {
  const [x, y] = [0.5 * Math.cos((160 * Math.PI) / 180), 0.5 * Math.sin((160 * Math.PI) / 180)];
  expect(meridionalSteepening(x, y, 180)).toBeCloseTo(-0.4698, 4);
  expect(meridionalTorque(x, y, 180)).toBeCloseTo(0.171, 4);
});

it('splits a vector into steepening and torque without loss, at any meridian', () => {
  const part = fc.double({ min: -5, max: 5, noNaN: true });
  fc.assert(
    fc.property(part, part, fc.integer({ min: 0, max: 360 }), (x, y, meridian) => {
      const along = meridionalSteepening(x, y, meridian);
      const across = meridionalTorque(x, y, meridian);
      expect(along * along + across * across).toBeCloseTo(x * x + y * y, 9);
      // A position and the one opposite are the same meridian.
      expect(meridionalSteepening(x, y, meridian + 180)).toBeCloseTo(along, 9);
    }),
  );
});

it('decides by value which reading is steep, in any order', () => {
  expect(steepMeridian(43.25, 2, 44.5, 92)).toBe(92);
  expect(steepMeridian(44.5, 92, 43.25, 2)).toBe(92);
  expect(steepMeridian(44.5, 0, 43.25, 90)).toBe(180);
});

it('takes the other meridian, turned by 90°, where one is blank', () => {
  expect(steepMeridian(44.5, Number.NaN, 43.25, 2)).toBe(92);
  expect(steepMeridian(43.25, 95, 44.5, Number.NaN)).toBe(5);
  expect(steepMeridian(43.25, Number.NaN, 44.5, Number.NaN)).toBeNaN();
});

it('gives equal powers no steep meridian and no astigmatism', () => {
  expect(steepMeridian(43, 90, 43, 180)).toBeNaN();
  expect(keratometricVectorX(43, 43, Number.NaN)).toBe(0);
  expect(powerAlongMeridian(43, 43, Number.NaN, 17)).toBe(43);
});

// Euler: 44.50 cos²(62°) + 43.25 sin²(62°) = 43.5255 at 30°; midway, at 47°, the mean of the two.
it('finds the power along any meridian', () => {
  expect(powerAlongMeridian(43.25, 44.5, 92, 30)).toBeCloseTo(43.5255, 4);
  expect(powerAlongMeridian(43.25, 44.5, 92, 47)).toBeCloseTo(43.875, 10);
  expect(powerAlongMeridian(43.25, 44.5, 92, 92)).toBeCloseTo(44.5, 10);
  expect(powerAlongMeridian(43.25, 44.5, 92, 2)).toBeCloseTo(43.25, 10);
});

// Mean radius of 42 and 46 D: (8.035714 + 7.336957)/2 = 7.686335 mm, 337.5/7.686335 = 43.9091.
it('averages radii, not dioptres, where a formula asks for the mean radius', () => {
  expect(powerOfMeanRadius(42, 46)).toBeCloseTo(43.9091, 4);
  expect(powerOfMeanRadius(42, 46)).toBeLessThan(44);
});

it('leaves a power of the wanted index untouched, and refuses impossible radii', () => {
  expect(reindexedPower(43.123456, 1.3375)).toBe(43.123456);
  expect(keratometricPower(0)).toBeNaN();
  expect(keratometricPower(-7.8)).toBeNaN();
  expect(cornealRadius(0)).toBeNaN();
});
