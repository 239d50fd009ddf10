import { expect, it } from 'vitest';
import { headerUnit, statedUnit } from '../../src/intake/header-unit.js';

// Spellings of units: common practice, no source.
it.each([
  ['K1 (mm)', 'mm'],
  ['K1 [D]', 'D'],
  ['R1 mm', 'mm'],
  ['axial_length_mm', 'mm'],
  ['CCT, µm', 'µm'],
  ['Achse °', undefined],
  ['Axis (°)', 'deg'],
  ['Axis deg', 'deg'],
  ['Incision (clock hours)', 'clock'],
  ['BCVA (logMAR)', 'logmar'],
  ['VA logMAR', 'logmar'],
  ['Visus [dezimal]', 'decimal'],
  ['Phaco time (s)', 's'],
  ['Case min', 'min'],
  ['Age (years)', 'years'],
] as const)('%j states %s', (header, unit) => {
  expect(headerUnit(header)).toBe(unit);
});

it.each(['', 'Days', 'mm', 'AL D', 'K1 (right)', 'Sph', 'Date', 'Time (of day)', 'IOL s'])(
  '%j states none',
  (header) => {
    expect(headerUnit(header)).toBeUndefined();
  },
);

it('reads the cells of a row of units, single letters among them', () => {
  expect(['D', '(mm)', '[ ° ]', 'dpt.', 's', 'code', ''].map(statedUnit)).toEqual([
    'D',
    'mm',
    'deg',
    'D',
    's',
    undefined,
    undefined,
  ]);
});
