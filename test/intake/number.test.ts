import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type NumberForm, parseNumber } from '../../src/intake/number.js';

const point: NumberForm = { decimal: 'point', unit: 'D' };
const comma: NumberForm = { decimal: 'comma', unit: 'D' };

// Spellings met in exports: common practice, no source.
it.each([
  ['+0.50', 0.5],
  ['−0.50', -0.5],
  ['–0.50', -0.5],
  ['- 0.50', -0.5],
  ['.5', 0.5],
  ['-.25', -0.25],
  ['1.25 D', 1.25],
  ['1.25D', 1.25],
  ['+1.25 dpt.', 1.25],
  ['\u00a01.25\u00a0D ', 1.25],
  ['0', 0],
  ['-0.00', 0],
  ['007', 7],
])('reads %j', (text, value) => {
  expect(Object.is(parseNumber(text, point), value)).toBe(true);
});

it.each([
  ['-0,50', -0.5],
  ['1,25 D', 1.25],
  [',5', 0.5],
  ['12', 12],
])('reads %j in a file of decimal commas', (text, value) => {
  expect(parseNumber(text, comma)).toBe(value);
});

it.each([
  '',
  ' ',
  '-',
  '.',
  '1.2.3',
  '1,234.5',
  '1 234',
  '1e3',
  '1.25E+00',
  '0x10',
  'Infinity',
  '--1',
  '+-1',
  '1.25-',
  '5.',
  '1.0-1.5',
  '~1',
  '<1',
  '1.25 mm',
  '1.25 DD',
  'one',
  'NaN',
  '６',
])('refuses %j: it is a finding, not a guess', (text) => {
  expect(parseNumber(text, point)).toBeUndefined();
});

describe('the decimal mark of the file', () => {
  it('refuses the other mark', () => {
    expect(parseNumber('1,25', point)).toBeUndefined();
    expect(parseNumber('1.25', comma)).toBeUndefined();
    expect(parseNumber('2.345', comma)).toBeUndefined();
    expect(parseNumber('1.25', { decimal: 'none' })).toBeUndefined();
    expect(parseNumber('125', { decimal: 'none' })).toBe(125);
  });
});

it.each([
  ['7.80 mm', 'mm', 7.8],
  ['550 µm', 'µm', 550],
  ['550 um', 'µm', 550],
  ['180°', 'deg', 180],
  ['90 deg', 'deg', 90],
  ['16 mmHg', 'mmHg', 16],
  ['6 m', 'm', 6],
  ['42 s', 's', 42],
  ['12 min', 'min', 12],
  ['71 years', 'years', 71],
  ['2450 /mm²', 'cells/mm²', 2450],
  ['12 %', '%', 12],
] as const)('reads %j where the field is in %s', (text, unit, value) => {
  expect(parseNumber(text, { decimal: 'point', unit })).toBe(value);
});

it('refuses the unit of another field: 43.5 D is no radius', () => {
  expect(parseNumber('43.5 D', { decimal: 'point', unit: 'mm' })).toBeUndefined();
  expect(parseNumber('43.5 D', { decimal: 'point' })).toBeUndefined();
});

it('reads any plain decimal as the language does', () => {
  fc.assert(
    fc.property(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: 0, max: 4 }), (digits, places) => {
      const text = (digits / 10 ** places).toFixed(places);
      expect(parseNumber(text, point)).toBe(Number(text) + 0);
      expect(parseNumber(text.replace('.', ','), comma)).toBe(Number(text) + 0);
    }),
  );
});
