import { expect, it } from 'vitest';
import { axisText } from '../../src/format/axis.js';

it.each([
  [92, '92'],
  [179.7, '180'],
  [0.3, '180'],
  [0, '180'],
  [180, '180'],
  [0.5, '1'],
  [44.5, '45'],
])('prints an axis of %d as %s: 180 and never 0, wrapped after rounding', (axis, text) => {
  expect(axisText(axis)).toBe(text);
});

it('fills up to three digits in the "@" form', () => {
  expect(axisText(92, 3)).toBe('092');
  expect(axisText(5.2, 3)).toBe('005');
});

it.each([-1, 181, Number.NaN])('refuses %d', (axis) => {
  expect(() => axisText(axis)).toThrow(/expected 0 to 180/);
});
