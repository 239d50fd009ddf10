import fc from 'fast-check';
import { expect, it } from 'vitest';
import { axisOf } from '../../src/optics/axis.js';
import { doubleAngleX, doubleAngleY, vectorMagnitude } from '../../src/optics/double-angle.js';
import { axisGap, opticsChecks } from './reference.js';

type Cylinder = readonly [magnitude: number, axis: number];

function sum(...cylinders: readonly Cylinder[]): readonly [magnitude: number, axis: number] {
  const x = cylinders.reduce((total, [magnitude, axis]) => total + doubleAngleX(magnitude, axis), 0);
  const y = cylinders.reduce((total, [magnitude, axis]) => total + doubleAngleY(magnitude, axis), 0);
  return [vectorMagnitude(x, y), axisOf(x, y)];
}

function mean(cylinders: readonly Cylinder[]): readonly [magnitude: number, axis: number] {
  const [magnitude, axis] = sum(...cylinders);
  return [magnitude / cylinders.length, axis];
}

// Arithmetic on doubled angles, e.g. (cos 10° + cos 350°)/2 = cos 10° = 0.9848 at 180: a mean of the axes would say 90.
it('averages cylinders as vectors, never their axes', () => {
  const [magnitude, axis] = mean([
    [1, 5],
    [1, 175],
  ]);
  expect(magnitude).toBeCloseTo(0.9848, 4);
  expect(axisGap(axis, 180)).toBeLessThan(1e-9);
});

it('cancels two equal cylinders at right angles', () => {
  const [magnitude, axis] = sum([1, 0], [1, 90]);
  expect(magnitude).toBeLessThan(1e-12);
  expect(axis).toBeNaN();
});

// 2 cos 30° = 1.7321 at the bisecting axis.
it('adds 1.00 at 90 and 1.00 at 60 to 1.7321 at 75', () => {
  const [magnitude, axis] = sum([1, 90], [1, 60]);
  expect(magnitude).toBeCloseTo(1.7321, 4);
  expect(axis).toBeCloseTo(75, 10);
});

// Law of cosines: √(2² + 1.5² − 2·2·1.5·cos 20°) = 0.7822.
it('subtracts 1.50 at 40 from 2.00 at 30', () => {
  const [magnitude, axis] = sum([2, 30], [-1.5, 40]);
  expect(magnitude).toBeCloseTo(0.7822, 4);
  expect(axis).toBeCloseTo(9.51, 2);
});

it('is one vector in both notations', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 12, noNaN: true }), fc.integer({ min: 1, max: 180 }), (cylinder, axis) => {
      expect(doubleAngleX(-cylinder, axis)).toBeCloseTo(doubleAngleX(cylinder, axis + 90), 12);
      expect(doubleAngleY(-cylinder, axis)).toBeCloseTo(doubleAngleY(cylinder, axis + 90), 12);
    }),
  );
});

it('takes a blank axis beside a negligible cylinder for no astigmatism, and for unknown otherwise', () => {
  expect(doubleAngleX(0, Number.NaN)).toBe(0);
  expect(doubleAngleY(-0.009, Number.NaN)).toBe(0);
  expect(doubleAngleX(0.01, Number.NaN)).toBeNaN();
  expect(doubleAngleY(-0.5, Number.NaN)).toBeNaN();
  expect(doubleAngleX(Number.NaN, 90)).toBeNaN();
});

// Twelve plus cylinders; centroid, and the centroid after left eyes are mirrored: optics-checks.csv 3.cen, 3.flip.cen.
const plusCylinders: readonly (readonly ['R' | 'L', number, number])[] = [
  ['R', 0.5, 10],
  ['L', 0.75, 172],
  ['R', 0.25, 95],
  ['L', 1, 160],
  ['R', 0, Number.NaN],
  ['R', 0.62, 25],
  ['L', 0.38, 150],
  ['R', 0.87, 5],
  ['L', 0.5, 178],
  ['L', 0.25, 88],
  ['R', 1.12, 170],
  ['L', 0.75, 20],
];

it('keeps the eye without astigmatism in the centroid', () => {
  const [magnitude, axis] = mean(plusCylinders.map(([, cylinder, at]) => [cylinder, at]));
  expect(magnitude).toBeCloseTo(opticsChecks.get('3.cen.mag') as number, 9);
  expect(axis).toBeCloseTo(opticsChecks.get('3.cen.axis') as number, 7);
  const magnitudes = plusCylinders.reduce((total, [, cylinder]) => total + cylinder, 0) / 12;
  expect(magnitudes).toBeCloseTo(opticsChecks.get('3.meanmag') as number, 9);
  expect(magnitudes).toBeGreaterThan(magnitude);
});

// Harris, Ophthalmic Physiol Opt 2007;27:412–415: a mirrored axis is 180 − axis, y → −y. A check value only: no left
// eye is mirrored here, and the oblique part of the centroid shows what mirroring would do.
it('moves the oblique part of a centroid, and nothing else, when left eyes are mirrored', () => {
  const mirrored = plusCylinders.map(([side, cylinder, at]) => [cylinder, side === 'L' ? 180 - at : at] as const);
  const x = mirrored.reduce((total, [cylinder, at]) => total + doubleAngleX(cylinder, at), 0) / 12;
  const y = mirrored.reduce((total, [cylinder, at]) => total + doubleAngleY(cylinder, at), 0) / 12;
  expect(x).toBeCloseTo(opticsChecks.get('3.flip.cen.x') as number, 9);
  expect(x).toBeCloseTo(opticsChecks.get('3.cen.x') as number, 9);
  expect(y).toBeCloseTo(opticsChecks.get('3.flip.cen.y') as number, 9);
  expect(y).not.toBeCloseTo(opticsChecks.get('3.cen.y') as number, 2);
  expect(axisOf(x, y)).toBeCloseTo(opticsChecks.get('3.flip.cen.axis') as number, 7);
  expect(vectorMagnitude(x, y)).toBeCloseTo(opticsChecks.get('3.flip.cen.mag') as number, 9);
});

const before: readonly Cylinder[] = [
  [1.25, 88],
  [0.8, 95],
  [1.6, 80],
  [2.1, 100],
  [0.95, 5],
  [1.4, 92],
  [1.75, 85],
  [0.6, 170],
];
const after: readonly Cylinder[] = [
  [1, 92],
  [0.7, 100],
  [1.1, 78],
  [1.85, 104],
  [1.2, 8],
  [1.05, 95],
  [1.55, 80],
  [0.9, 175],
];
const others: readonly Cylinder[] = [
  [0.3, 85],
  [0.45, 100],
  [0.6, 70],
  [0.25, 120],
  [0.8, 92],
  [0.55, 78],
  [0.4, 105],
];

it.each([
  ['3.pair', [...after, ...before.map(([magnitude, axis]) => [-magnitude, axis] as const)], 8],
  ['3.g2', others, 7],
] as const)('reproduces the centroid %s', (id, cylinders, eyes) => {
  const [magnitude, axis] = sum(...cylinders);
  expect(magnitude / eyes).toBeCloseTo(opticsChecks.get(`${id}.cen.mag`) as number, 9);
  expect(axis).toBeCloseTo(opticsChecks.get(`${id}.cen.axis`) as number, 7);
  expect((magnitude / eyes) * Math.cos((axis * Math.PI) / 90)).toBeCloseTo(
    opticsChecks.get(`${id}.cen.x`) as number,
    9,
  );
  expect((magnitude / eyes) * Math.sin((axis * Math.PI) / 90)).toBeCloseTo(
    opticsChecks.get(`${id}.cen.y`) as number,
    9,
  );
});
