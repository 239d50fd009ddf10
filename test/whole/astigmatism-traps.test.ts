// The traps of astigmatism that reporting standards warn of, each stepped beside: what the audit gives, and what it
// would give inside the trap. Expected values by hand.
import { describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { numbersOf } from '../../src/columns/table.js';
import { en } from '../../src/words/index.js';
import type { Audit } from './audit.js';
import { auditOf } from './audit.js';
import { type ToricEye, toricAudit, toricFiles, toricText } from './toric-series.js';

const plain: ToricEye = { patient: 'A', side: 'R', sphere: 0, cylinder: 0 };
const eyesOf = (...eyes: readonly Partial<ToricEye>[]): readonly ToricEye[] =>
  eyes.map((eye, i) => ({ ...plain, patient: `P${i}`, ...eye }));
const value = ({ results }: Audit, measure: string, statistic: string): number | undefined =>
  results.get(measure, 'all', statistic).value;
const columnOf = ({ derived }: Audit, name: string): readonly number[] => [...numbersOf(derived.eyes, name)];

// (cos 10° + cos 350°)/2 = cos 10°: 0.9848 at 180. The mean of the axes, 5 and 175, is 90.
it('1 · averages vectors, not axes', async () => {
  const corneas = eyesOf({ before: [43, 1, 5] }, { before: [43, 1, 175] });
  const audit = await toricAudit(corneas);
  expect(value(audit, 'corneal_cylinder_before', 'centroid_axis')).toBeCloseTo(180, 9);
  expect(value(audit, 'corneal_cylinder_before', 'centroid_magnitude')).toBeCloseTo(Math.cos(Math.PI / 18), 12);
});

// 1.00 at 90 and 1.00 at 180 cancel; magnitudes without their axes have the mean 1.00.
it('2 · does not average cylinders without their axes', async () => {
  const audit = await toricAudit(eyesOf({ before: [43, 1, 90] }, { before: [43, 1, 180] }));
  expect(value(audit, 'corneal_cylinder_before', 'centroid_magnitude')).toBeCloseTo(0, 12);
  expect(value(audit, 'corneal_cylinder_before', 'mean_magnitude')).toBeCloseTo(1, 12);
});

// A cornea steep at 90 asks for −1.00 × 180: both are one vector, and nothing was induced. Taken as it stands the
// minus axis lies 90° off, and 2.00 D would seem to be induced. Sphere −1.00/…: zero and −1.00 D at 12 mm are 0 and
// −1/1.012 = −0.988, so 0.012 D remain.
it('3 · sets the axis of a minus cylinder beside the steep meridian, not 90° off', async () => {
  const audit = await toricAudit(eyesOf({ cylinder: -1, axis: 180, before: [43, 1, 90] }));
  const [x = Number.NaN] = columnOf(audit, 'surgically_induced_x');
  expect(x).toBeCloseTo(1 - 1 / 1.012, 12);
});

// −8.00 and −10.50 at 12 mm become −7.2993 and −9.3250: 2.0258 at the cornea, 2.50 as recorded (optics sheet, section 1).
it('4 · keeps the spectacle and the corneal plane apart', async () => {
  const audit = await toricAudit(eyesOf({ sphere: -8, cylinder: -2.5, axis: 30 }));
  expect(value(audit, 'refractive_cylinder_after_recorded', 'mean')).toBe(2.5);
  expect(value(audit, 'refractive_cylinder_after', 'mean_magnitude')).toBeCloseTo(2.0258, 4);
});

// The keratometry beside the refraction of day 41 counts: 0.50 more at 90, not the 1.50 of day 25.
it('5 · takes keratometry and refraction of one date, where both were measured on it', async () => {
  const eyes = eyesOf({ cylinder: -0.5, axis: 180, before: [43, 1, 90], after: [43, 1.5, 90], incision: 90 });
  const files = toricFiles(eyes);
  const earlier = `${files['keratometer.csv']}\nP0,R,2025-02-04,43,180,45.50,90,one`;
  const audit = await auditOf(toricText(), { ...files, 'keratometer.csv': earlier });
  expect(value(audit, 'induced_along_incision', 'mean')).toBeCloseTo(0.5, 12);
});

it('6 · takes induced astigmatism from one instrument, and counts the eyes that have none', async () => {
  const eyes = eyesOf(
    { cylinder: -0.5, axis: 180, before: [43, 1, 90], after: [43, 1.5, 90], incision: 90 },
    { cylinder: -0.5, axis: 180, before: [43, 1, 90], after: [43, 3, 90], incision: 90, device: 'two' },
  );
  const audit = await toricAudit(eyes);
  expect(value(audit, 'induced_along_incision', 'n')).toBe(1);
  expect(value(audit, 'induced_along_incision', 'mean')).toBeCloseTo(0.5, 12);
  expect(value(audit, 'flow:cornea', 'no_same_device')).toBe(1);
});

// 1.00 at 20 in a right eye and at 160 in a left: (cos 40°, 0), 0.766 at 180. With the left eye mirrored: 1.00 at 20.
it('7 · mirrors no left eye', async () => {
  const audit = await toricAudit(eyesOf({ before: [43, 1, 20] }, { before: [43, 1, 160], side: 'L' }));
  expect(value(audit, 'corneal_cylinder_before', 'centroid_magnitude')).toBeCloseTo(Math.cos((2 * Math.PI) / 9), 12);
  expect(value(audit, 'corneal_cylinder_before', 'centroid_axis')).toBeCloseTo(180, 9);
});

it('8 · counts a turn counter-clockwise as plus in both eyes', async () => {
  const lens = { label: 1.5, intended: 90, end: 90, observed: 100 };
  const audit = await toricAudit(eyesOf(lens, { ...lens, side: 'L' }));
  expect(columnOf(audit, 'lens_rotation')).toEqual([10, 10]);
  expect(value(audit, 'lens_rotation', 'mean')).toBe(10);
});

// 1.00 at 90 and 0.01 at 180: the vectors' mean lies at 90, however often the noise points across.
it('9 · weighs by vectors: the axis of a cylinder near zero does not count, nor is it needed', async () => {
  const noise = { before: [43, 0.01, 180] as const };
  const audit = await toricAudit(eyesOf({ before: [43, 1, 90] }, noise, noise, { before: [43, 0, 1] }));
  expect(value(audit, 'corneal_cylinder_before', 'centroid_axis')).toBeCloseTo(90, 9);
  expect(value(audit, 'corneal_cylinder_before', 'n')).toBe(4);
  const judged = await toricAudit(eyesOf({ cylinder: -0.5, axis: 90, before: [43, 0.24, 90], label: 1.5 }));
  expect(value(judged, 'correction_index', 'missing')).toBe(1);
  expect(value(judged, 'torque', 'n')).toBe(1);
});

describe('the recorded cylinder and the vector at the cornea', () => {
  // 0.50/0.994 = 0.50302 at the cornea: counted there, the eye would be lost.
  it('+0.50 −0.50 × 90 counts as ≤ 0.50 D', async () => {
    const audit = await toricAudit(eyesOf({ sphere: 0.5, cylinder: -0.5, axis: 90 }));
    expect(value(audit, 'refractive_cylinder_after_recorded', 'count_within_0.50')).toBe(1);
    expect(value(audit, 'refractive_cylinder_after', 'mean_magnitude')).toBeGreaterThan(0.503);
  });

  it('counts it in both notations, and with any vertex distance', async () => {
    const audit = await toricAudit(eyesOf({ sphere: 0, cylinder: 0.5, axis: 180 }));
    expect(value(audit, 'refractive_cylinder_after_recorded', 'count_within_0.50')).toBe(1);
  });

  it('never share a column, nor a block of rows', async () => {
    const eyes = eyesOf(
      ...Array.from(
        { length: 12 },
        (_, i): Partial<ToricEye> => ({
          ...{ cylinder: -0.5, axis: 15 * i + 5, before: [43, 1, 90], after: [43, 1.25, 80], incision: 90 },
          ...{ label: 1.5, intended: 90, end: 88, observed: 95, residual: 0.25, residualAxis: 90 },
        }),
      ),
    );
    const { results, plan } = await toricAudit(eyes);
    const recorded = /^refractive_cylinder_after_recorded\|/;
    const vector = /^(refractive_cylinder_after|cylinder_prediction_error(:toric)?|split_residual|difference_vector)\|/;
    const tables = tabulate(results, plan, en);
    const residual = tables.find(({ id }) => id === 'residual-cylinder');
    const columns =
      residual?.head.slice(1).map((_, at) => residual.rows.flatMap(({ cells }) => cells[at]?.from ?? [])) ?? [];
    expect(columns.some((keys) => keys.some((key) => recorded.test(key)))).toBe(true);
    for (const keys of columns) {
      expect([keys.some((key) => recorded.test(key)), keys.some((key) => vector.test(key))]).not.toEqual([true, true]);
    }
    for (const { id, rows } of tables.filter((table) => table.id !== 'residual-cylinder')) {
      for (const { label, cells } of rows) {
        const keys = cells.flatMap(({ from }) => from);
        const both = keys.some((key) => recorded.test(key)) && keys.some((key) => vector.test(key));
        expect([id, label, both]).toEqual([id, label, false]);
      }
    }
  });
});
