import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fixed, numberStyles, signed } from '../../src/format/number.js';
import { parseRefraction } from '../../src/intake/refraction-cell.js';

// Spellings met in exports: common practice, no source.
it.each([
  ['-1.25 -0.50 x 90', -1.25, -0.5, 90],
  ['+0.50/-1.25x175', 0.5, -1.25, 175],
  ['−1.25 −0.50 × 90', -1.25, -0.5, 90],
  ['-1.25-0.50x90', -1.25, -0.5, 90],
  ['plano -0.75 @ 180', 0, -0.75, 180],
  ['pl / -0.75 x 180°', 0, -0.75, 180],
  ['-1.25 DS -0.50 DC x 90', -1.25, -0.5, 90],
  ['sph -1.25 cyl -0.50 ax 90', -1.25, -0.5, 90],
  ['S-1.25 C-0.50 A90', -1.25, -0.5, 90],
  ['-1.25 (-0.50 x 90)', -1.25, -0.5, 90],
  ['-1.00 / -0.50 / 90', -1, -0.5, 90],
  ['+11.00 -1.75 x 005', 11, -1.75, 5],
  ['+0.50 (-0.75 à 90°)', 0.5, -0.75, 90],
  ['+0.50 (-0.75) 90°', 0.5, -0.75, 90],
  ['+0.50 -0.75 90°', 0.5, -0.75, 90],
  ['(-0.75 à 90°) +0.50', 0.5, -0.75, 90],
  ['(90° -0.75) +0.50', 0.5, -0.75, 90],
  ['90° (-0.75) +0.50', 0.5, -0.75, 90],
])('reads %j', (text, sphere, cylinder, axis) => {
  expect(parseRefraction(text, 'point')).toEqual({ sphere, cylinder, axis, cylinderSigned: true });
});

it.each(['-1.00 DS', '-1.00 sph', '-1.00DS'])('reads %j as a sphere without cylinder', (text) => {
  expect(parseRefraction(text, 'point')).toEqual({ sphere: -1, cylinder: 0, axis: Number.NaN, cylinderSigned: true });
});

it('reads plano as no lens', () => {
  expect(parseRefraction('plano', 'point')).toMatchObject({ sphere: 0, cylinder: 0 });
});

it('leaves the cylinder missing where a number stands alone, as a blank field would', () => {
  expect(parseRefraction('-1.25', 'point')).toMatchObject({ sphere: -1.25, cylinder: Number.NaN });
});

it('keeps a cylinder whose axis is missing', () => {
  expect(parseRefraction('-1.25 -0.50', 'point')).toMatchObject({ cylinder: -0.5, axis: Number.NaN });
});

it('says where a cylinder carries no sign, so that the declared notation decides', () => {
  expect(parseRefraction('-1.25 0.50 x 90', 'point')).toMatchObject({ cylinder: 0.5, cylinderSigned: false });
});

it.each([
  '',
  '6/9',
  '20/40',
  '1.5 2',
  '-1.2.5',
  '1/2/24',
  'x 90',
  '-1.25 -0.50 x 90 add 2.50',
  'see notes',
  '+1.00 x 90',
  '90° -0.75',
  '90° 0.75 0.50',
  '+0.50 -0.75 90',
  '(-0.75) +0.50',
])('refuses %j', (text) => {
  expect(parseRefraction(text, 'point')).toBeUndefined();
});

it('follows the decimal mark of the file', () => {
  expect(parseRefraction('-1,25 -0,50 x 90', 'comma')).toMatchObject({ sphere: -1.25, cylinder: -0.5, axis: 90 });
  expect(parseRefraction('-1,25 -0,50 x 90', 'point')).toBeUndefined();
});

it('reads back any refraction that is written out', () => {
  const eighths = fc.integer({ min: -96, max: 96 }).map((eighth) => eighth / 8);
  const { filePoint } = numberStyles;
  fc.assert(
    fc.property(eighths, eighths, fc.integer({ min: 1, max: 180 }), (sphere, cylinder, axis) => {
      fc.pre(cylinder !== 0);
      const text = `${fixed(sphere, 3, filePoint)} ${signed(cylinder, 3, filePoint)} x ${axis}`;
      expect(parseRefraction(text, 'point')).toEqual({ sphere, cylinder, axis, cylinderSigned: true });
    }),
  );
});
