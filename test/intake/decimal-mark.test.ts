import { expect, it } from 'vitest';
import { judgeDecimalMark } from '../../src/intake/decimal-mark.js';

it.each([
  ['point', ['', '1.25', '0', '180', '-0.5']],
  ['point', ['.5', 'plano', '12']],
  ['point', ['0.125', '23.456']],
  ['point', ['-1.25 -0.50 x 90', '20/40']],
  ['point', ['1234.567']],
  ['comma', ['1,25', '-0,50 D']],
  ['comma', ['6/7,5', '6/9']],
  ['comma', ['1,234', '1,2']],
  ['none', ['', '12', '180', 'OD', '6/9']],
] as const)('judges %s', (mark, words) => {
  expect(judgeDecimalMark(words)).toEqual({ mark });
});

// 1,234 may be a thousand or one and a quarter: the specification forbids to guess.
it.each([[['1,234', '12']], [['23.456', '180']]])('leaves %j undecided, and shows it', (words) => {
  expect(judgeDecimalMark(words)).toEqual({ mark: undefined, doubt: 'undecided', examples: [words[0]] });
});

it('reports both marks where a file has both', () => {
  const judged = judgeDecimalMark(['0.25', '12', '0,8']);
  expect(judged).toEqual({ mark: undefined, doubt: 'contradictory', examples: ['0.25', '0,8'] });
});

it('takes 2.345 beside decimal commas for thousands, which contradict', () => {
  const judged = judgeDecimalMark(['0,8', '2.345']);
  expect(judged).toEqual({ mark: undefined, doubt: 'contradictory', examples: ['2.345', '0,8'] });
});

it.each(['1,234.5', '1.234,5', '1.234.567', '12,345,678'])('refuses thousands marks: %s', (word) => {
  expect(judgeDecimalMark(['12', word])).toEqual({ mark: undefined, doubt: 'thousands', examples: [word] });
});

it('does not mistake dates, times, codes and text for numbers', () => {
  const words = ['01.05.2024', '1.5.24', '10:15', 'PCR,VL', 'Haze, mild', 'v2.1b', '192.168.0.1'];
  expect(judgeDecimalMark(words)).toEqual({ mark: 'none' });
});
