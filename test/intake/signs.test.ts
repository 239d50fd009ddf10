import { expect, it } from 'vitest';
import { plainSigns, unwrapped } from '../../src/intake/signs.js';

it.each([
  [' \u22120,50\u00a0D ', '-0,50 D'],
  ['\u20130.50', '-0.50'],
  ['0.50 × 90', '0.50 x 90'],
  ['="-1.25"', '-1.25'],
  ['"-1.25"', '-1.25'],
  ["'-1.25", '-1.25'],
  ['\ufeff1', '1'],
  ['a \t b', 'a b'],
])('%j is plainly %j', (text, plain) => {
  expect(plainSigns(text)).toBe(plain);
});

it.each([
  [' A1\u00a0', 'A1'],
  ['="0012"', '0012'],
  ["'0012", '0012'],
  ['\u200bA1', 'A1'],
  ['a–b  c', 'a–b  c'],
  ['"', '"'],
  ["'", "'"],
  ['say "x"', 'say "x"'],
])('%j is the code %j', (text, code) => {
  expect(unwrapped(text)).toBe(code);
});
