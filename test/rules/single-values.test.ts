// Possible and usual ranges of ../shared/spec/2-data.md, the table of quality rules; both ends are inside.
import { describe, expect, it } from 'vitest';
import { numbersOf, statesOf } from '../../src/columns/table.js';
import type { Kind } from '../../src/records/canonical.js';
import { clinic, declared } from './made-up.js';

type Case = readonly [rule: string, field: string, inside: readonly number[], outside: readonly number[]];

const ofEyes: readonly Case[] = [
  ['chamber-depth-range', 'acd', [1.5, 6], [1.49, 6.01, 31.5]],
  ['lens-thickness-range', 'lens_thickness', [2, 7], [1.99, 7.01]],
  ['white-to-white-range', 'white_to_white', [8, 15], [7.99, 15.01]],
  ['age-range', 'age', [18, 115], [-1, 116]],
  ['incision-width-range', 'incision_width', [0.5, 12], [0.49, 12.01]],
  ['lens-power-range', 'lens_power', [-15, 60], [-15.25, 60.25, 215]],
  ['lens-cylinder-range', 'lens_cylinder', [0, 12], [-1.5, 12.25]],
  ['time-range', 'phaco_time_s', [0, 4000], [-0.1]],
  ['time-range', 'laser_time_s', [0, 4000], [-1]],
  ['time-range', 'case_time_min', [0, 400], [-1]],
  ['energy-range', 'effective_energy', [0, 400], [-0.01]],
  ['axis-range', 'lens_axis_intended', [0, 180], [181]],
  ['axis-range', 'lens_axis_end', [0, 180], [-1]],
  ['axis-range', 'incision_axis', [0, 360], [361, -1]],
  ['axis-range', 'paracentesis_axis', [0, 360], [361]],
];

const ofExams: readonly (readonly [...Case, kind: Kind])[] = [
  ['endothelium-range', 'ecd', [200, 5000], [199, 5001], 'endothelia'],
  ['corneal-thickness-range', 'cct', [300, 900], [299, 901, 0.55], 'thicknesses'],
  ['pressure-range', 'iop', [0, 80], [-1, 81], 'pressures'],
];

describe('a value of an eye', () => {
  it.each(ofEyes)('%s: %s may be %j and not %j', async (rule, field, inside, outside) => {
    const values = [...inside, ...outside];
    const eyes = values.map((value, i) => ({ patient: `A${i}`, [field]: value }));
    const { told, tables } = await clinic({ eyes: [...eyes, { patient: 'Z', [field]: inside[0] }] });
    const found = told(rule).filter(({ severity }) => severity === 'set aside');
    expect(found.map(({ written, field: of, effect }) => [written, of, effect])).toEqual(
      outside.map((value) => [String(value), field, 'value left out']),
    );
    const expected = [...inside.map(() => 0), ...outside.map(() => 2), 0];
    expect([...statesOf(tables.eyes, `${field}.state`)]).toEqual(expected);
    expect(numbersOf(tables.eyes, field)[values.length - 1]).toBe(values.at(-1));
  });

  it('age-range: asks about children', async () => {
    const eyes = [17, 18, 0, 90].map((age, i) => ({ patient: `A${i}`, age }));
    const found = (await clinic({ eyes })).told('age-range');
    expect(found.map(({ row, severity, detail }) => [row, severity, detail])).toEqual([
      [2, 'query', 18],
      [4, 'query', 18],
    ]);
  });
});

describe('a measurement of one value', () => {
  it.each(ofExams)('%s: %s may be %j and not %j', async (rule, field, inside, outside, kind) => {
    const values = [...inside, ...inside, ...inside, ...outside];
    const exams = values.map((value, i) => ({ patient: 'A', days: 30 + i, [field]: value }));
    const { told, tables } = await clinic({ eyes: [{ patient: 'A' }], exams });
    expect(told(rule).map(({ written, severity }) => [written, severity])).toEqual(
      outside.map((value) => [String(value), 'set aside']),
    );
    const out = [...statesOf(tables.measurements[kind])].filter((state) => state === 2);
    expect(out).toHaveLength(outside.length);
  });
});

describe('a value beside a refraction', () => {
  const refraction = { sphere: 0, cylinder: 0 };

  it('vertex-range: is set aside alone; metres are named', async () => {
    const distances = [0, 20, 12, 13, 14, 1, 20.1, 0.012, 0.999];
    const exams = distances.map((vertex_mm, i) => ({ patient: 'A', days: 30 + i, ...refraction, vertex_mm }));
    const { told, tables } = await clinic({ eyes: [{ patient: 'A' }], exams });
    expect(told('vertex-range').map(({ written, other, effect }) => [written, other, effect])).toEqual([
      ['20.1', Number.NaN, 'value left out'],
      ['0.012', 12, 'value left out'],
      ['0.999', 999, 'value left out'],
    ]);
    const { refractions } = tables.measurements;
    expect([...statesOf(refractions)]).toEqual(distances.map(() => 0));
    expect([...statesOf(refractions, 'vertex.state')]).toEqual([0, 0, 0, 0, 0, 0, 2, 2, 2]);
  });

  it('vertex-range: a whole column in metres stops the run', async () => {
    const exams = [30, 31, 32].map((days) => ({ patient: 'A', days, ...refraction, vertex_mm: 0.012 }));
    const { told } = await clinic({ eyes: [{ patient: 'A' }], exams });
    expect(told('column-impossible')).toMatchObject([{ severity: 'stop', column: 'vertex_mm' }]);
  });

  it('lane-range: is set aside alone', async () => {
    const exams = [0.3, 10, 6, 5, 4, 0.29, 10.1, 600].map((lane_m, i) => ({
      patient: 'A',
      days: 30 + i,
      ...refraction,
      lane_m,
    }));
    const { told, tables } = await clinic({ eyes: [{ patient: 'A' }], exams });
    expect(told('lane-range').map(({ written }) => written)).toEqual(['0.29', '10.1', '600']);
    expect([...statesOf(tables.measurements.refractions, 'lane.state')]).toEqual([0, 0, 0, 0, 0, 2, 2, 2]);
  });
});

it('axis-range: a predicted axis, and the axes of the whole cornea and its back', async () => {
  const eyes = [{ patient: 'A', predicted_cylinder: 0.5, predicted_axis: 190 }];
  const exam = { patient: 'A', days: -5, total_corneal_cylinder: 1, total_corneal_axis: 181 };
  const exams = [{ ...exam, posterior_corneal_cylinder: 0.3, posterior_corneal_axis: 200 }];
  const { told, tables } = await clinic({ eyes, exams });
  expect(
    told('axis-range')
      .map(({ field }) => field)
      .sort(),
  ).toEqual(['posterior_corneal_axis', 'predicted_axis', 'total_corneal_axis']);
  expect(numbersOf(tables.measurements.totalCorneas, 'axis')[0]).toBeNaN();
});

it('lens-power-step: notes powers that are no quarters', async () => {
  const eyes = [21, 21.25, 21.3, -5.5, -5.6, undefined].map((lens_power, i) => ({ patient: `A${i}`, lens_power }));
  const found = (await clinic({ eyes })).told('lens-power-step');
  expect(found.map(({ written, severity }) => [written, severity])).toEqual([
    ['21.3', 'note'],
    ['-5.6', 'note'],
  ]);
});

it('limits that the audit declares hold instead', async () => {
  const eyes = [20, 30].map((age, i) => ({ patient: `A${i}`, age }));
  const { told } = await clinic({ eyes }, declared({ age: [25, 100] }));
  expect(told('age-range')).toMatchObject([{ row: 2, severity: 'query', detail: 25 }]);
});
