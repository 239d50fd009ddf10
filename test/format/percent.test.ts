import { expect, it } from 'vitest';
import { numberStyles } from '../../src/format/number.js';
import { percent } from '../../src/format/percent.js';

// Published rates recomputed from their counts: EUREQUO 2018 (72.7, 93.0), Brogan 2019 (88.8, 62.4), Swedish register
// (58.4, 83.8), ICHOM cohort (88.7, 91.5).
it.each([
  [205_675, 282_811, '72.7'],
  [263_015, 282_811, '93.0'],
  [7938, 8943, '88.8'],
  [5577, 8943, '62.4'],
  [13_580, 23_244, '58.4'],
  [19_489, 23_244, '83.8'],
  [2505, 2823, '88.7'],
  [2163, 2364, '91.5'],
])('prints %d of %d as %s', (counted, n, text) => {
  expect(percent(counted / n, n)).toBe(text);
});

it('prints no decimal below 100 eyes', () => {
  expect(percent(33 / 68, 68)).toBe('49');
  expect(percent(1, 100)).toBe('100.0');
  expect(percent(0.125, 400, numberStyles.typesetComma)).toBe('12,5');
});

it('refuses what is no share', () => {
  expect(() => percent(1.1, 10)).toThrow('percent: share 1.1; expected 0 to 1');
  expect(() => percent(0.5, 0)).toThrow('percent: n 0; expected at least 1');
});
