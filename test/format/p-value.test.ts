import { expect, it } from 'vitest';
import { numberStyles } from '../../src/format/number.js';
import { pValue } from '../../src/format/p-value.js';

it.each([
  [0.013, '0.013'],
  [0.0495, '0.050'],
  [0.001, '0.001'],
  [0.0009996, '< 0.001'],
  [0, '< 0.001'],
  [1, '1.000'],
])('prints %d as %s', (p, text) => {
  expect(pValue(p)).toBe(text);
});

it('follows the decimal mark of the report', () => {
  expect(pValue(0.013, numberStyles.typesetComma)).toBe('0,013');
  expect(pValue(0, numberStyles.typesetComma)).toBe('< 0,001');
});

it.each([-0.1, 1.1, Number.NaN])('refuses %d', (p) => {
  expect(() => pValue(p)).toThrow(/expected 0 to 1/);
});
