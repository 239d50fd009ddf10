import { expect, it } from 'vitest';
import { areNationalNumbers } from '../../src/intake/national-number.js';

// Specimen numbers that the issuing bodies print in their own explanations, from memory; none belongs to a person.
it.each([
  ['United Kingdom', '943 476 5919'],
  ['Germany', 'A123456780'],
  ['France', '2 55 08 14 168 025 38'],
  ['Switzerland', '756.9217.0769.85'],
  ['Netherlands', '111222333'],
  ['Poland', '44051401359'],
  ['Spain', '12345678Z'],
])('recognises the specimen of %s, and not the same with its last place changed', (_, specimen) => {
  expect(areNationalNumbers([specimen])).toBe(true);
  const last = specimen.at(-1) as string;
  const changed = specimen.slice(0, -1) + (/\d/.test(last) ? String((Number(last) + 1) % 10) : 'A');
  expect(areNationalNumbers([changed])).toBe(false);
});

it('does not mistake codes of the same shape, of which one in ten has a check digit by chance', () => {
  const codes = Array.from({ length: 500 }, (_, code) => String(1_000_000_000 + code * 7919));
  expect(areNationalNumbers(codes)).toBe(false);
  const lettered = Array.from({ length: 500 }, (_, code) => `${String(code).padStart(8, '0')}A`);
  expect(areNationalNumbers(lettered)).toBe(false);
});

it.each(['P0000001', '0', '12345', '2024-05-13', '', '-1.25'])('finds nothing in %j', (word) => {
  expect(areNationalNumbers([word])).toBe(false);
});
