import { expect, it } from 'vitest';
import { interval } from '../../src/format/interval.js';
import { numberStyles } from '../../src/format/number.js';

it('puts a word between the limits, since a dash beside a minus sign misleads', () => {
  expect(interval(-0.1, 0.012, 2)).toBe('\u22120.10 to 0.01');
  expect(interval(-0.1, 0.012, 2, numberStyles.typesetComma, 'bis')).toBe('\u22120,10 bis 0,01');
});

it('refuses exchanged limits and limits that do not exist', () => {
  expect(() => interval(1, 0, 2)).toThrow('interval: 1 to 0; expected the lower limit first');
  expect(() => interval(Number.NaN, 0, 2)).toThrow(/expected a finite number/);
});
