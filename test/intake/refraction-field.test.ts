import { expect, it } from 'vitest';
import { parseAxis, parseCylinder, parseSphere } from '../../src/intake/refraction-field.js';

// Spellings met in exports: common practice, no source.
it.each([
  ['plano', 0],
  ['Pl', 0],
  ['pl.', 0],
  ['0', 0],
  ['∞', 0],
  ['-1.00 DS', -1],
  ['+0.75sph', 0.75],
  ['−2.25', -2.25],
  ['1.25 D', 1.25],
])('reads a sphere %j', (text, sphere) => {
  expect(parseSphere(text, 'point')).toBe(sphere);
});

it.each([
  ['sph', 0],
  ['DS', 0],
  ['D.S.', 0],
  ['plano', 0],
  ['-0.50 DC', -0.5],
  ['-0.75cyl', -0.75],
  ['+0.25', 0.25],
])('reads a cylinder %j', (text, cylinder) => {
  expect(parseCylinder(text, 'point')).toBe(cylinder);
});

it.each([
  ['90', 90],
  ['x 90', 90],
  ['X175', 175],
  ['× 5', 5],
  ['@ 90', 90],
  ['ax. 20', 20],
  ['axis 20', 20],
  ['180°', 180],
  ['x90 °', 90],
  ['005', 5],
  ['0', 0],
  ['195', 195],
  ['-5', -5],
])('reads an axis %j, leaving its range to the rule', (text, axis) => {
  expect(parseAxis(text, 'point')).toBe(axis);
});

it('refuses words of the other fields', () => {
  expect(parseSphere('sph', 'point')).toBeUndefined();
  expect(parseSphere('DS', 'point')).toBeUndefined();
  expect(parseSphere('-0.50 DC', 'point')).toBeUndefined();
  expect(parseCylinder('x 90', 'point')).toBeUndefined();
  expect(parseAxis('x', 'point')).toBeUndefined();
  expect(parseAxis('90 D', 'point')).toBeUndefined();
});

it('follows the decimal mark of the file', () => {
  expect(parseSphere('-1,25 DS', 'comma')).toBe(-1.25);
  expect(parseCylinder('-0,50', 'point')).toBeUndefined();
});
