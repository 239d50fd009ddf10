import { expect, it } from 'vitest';
import { acuityScale } from '../../src/intake/acuity-scale.js';

it.each([
  [
    ['0.3', '0.5', '1.0'],
    ['decimal', 'logmar'],
  ],
  [
    ['1', '1.0'],
    ['decimal', 'logmar', 'letters'],
  ],
  [['0', '0.3', '-0.1'], ['logmar']],
  [['0.0', '0.3'], ['logmar']],
  [['85', '70', '55'], ['letters']],
  [['0.3', '85'], []],
] as const)('finds the scales of %j: %j', (words, scales) => {
  expect(acuityScale(words, 'point').scales).toEqual(scales);
});

it('asks nothing of fractions and low-vision words', () => {
  expect(acuityScale(['6/9', '20/40-2', 'CF', ''], 'point')).toEqual({ bareNumbers: 0, scales: [], examples: [] });
});

it('shows up to three of the numbers in question, as written', () => {
  const { bareNumbers, examples } = acuityScale(['6/9', '0,3', '0,5', '0,8', '1,0'], 'comma');
  expect(bareNumbers).toBe(4);
  expect(examples).toEqual(['0,3', '0,5', '0,8']);
});
