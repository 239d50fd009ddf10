// The sample's toric eyes: identities that hold whatever the numbers are, and a second route by power matrices.
import { expect, it } from 'vitest';
import { numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { auditOf } from './audit.js';
import { auditText, committedFiles } from './sample.js';

const audit = await auditOf(auditText(), committedFiles());
const { derived, results } = audit;
const column = (name: string) => numbersOf(derived.eyes, name);
const value = (measure: string, statistic: string, group = 'all') =>
  results.get(measure, group, statistic).value ?? NaN;
const eyesWith = (name: string) => [...column(name).keys()].filter((eye) => !Number.isNaN(column(name)[eye] as number));

it('splits the residual of each eye exactly, and of the means on the same eyes', () => {
  const parts = ['split_predicted', 'split_misalignment', 'split_rest'];
  expect(eyesWith('split_residual_x').length).toBeGreaterThan(50);
  for (const part of ['x', 'y']) {
    const r = column(`split_residual_${part}`);
    for (const eye of eyesWith(`split_residual_${part}`)) {
      const sum = parts.reduce((all, name) => all + (column(`${name}_${part}`)[eye] as number), 0);
      expect(sum).toBeCloseTo(r[eye] as number, 12);
    }
    const sum = parts.reduce((all, name) => all + value(name, `centroid_${part}`), 0);
    expect(sum).toBeCloseTo(value('split_residual', `centroid_${part}`), 12);
  }
  expect(new Set(parts.map((name) => value(name, 'n'))).size).toBe(1);
});

it('keeps the identities of the treatment: S = T − D, |S|² = FE² + torque²', () => {
  const [t, s, d] = ['target_induced', 'surgically_induced', 'difference_vector'].map((name) => column(`${name}_x`));
  const [sy, along, across] = [column('surgically_induced_y'), column('flattening_effect'), column('torque')];
  const eyes = eyesWith('flattening_effect');
  expect(eyes.length).toBeGreaterThan(50);
  for (const eye of eyes) {
    const at = (values: Float64Array | undefined) => values?.[eye] as number;
    expect(at(t) - at(d)).toBeCloseTo(at(s), 12);
    expect(at(along) ** 2 + at(across) ** 2).toBeCloseTo(at(s) ** 2 + at(sy) ** 2, 10);
  }
});

/** Steep matrix of a cornea: power along each meridian as a symmetric matrix, no doubled angle. */
function matrix(flat: number, steep: number, axis: number): readonly [number, number, number] {
  const a = ((Number.isNaN(axis) ? 0 : axis) * Math.PI) / 180;
  const [c, s] = [Math.cos(a), Math.sin(a)];
  return [steep * c * c + flat * s * s, (steep - flat) * s * c, steep * s * s + flat * c * c];
}

it('gives the change of the cornea that power matrices give: along = change along less change across', () => {
  const names = (at: string) => ['flat', 'steep', 'steepAxis'].map((name) => column(`${name}@${at}`));
  const [after, before] = [names('outcome'), names('before_same_device')];
  const incision = column('incision_axis');
  const analysed = analysedIn(derived.membership.cornea);
  const eyes = eyesWith('induced_along_incision').filter((eye) => analysed[eye]);
  expect(eyes.length).toBe(value('induced_along_incision', 'n'));
  const along = eyes.map((eye) => {
    const [later, earlier] = [after, before].map((of) =>
      matrix(...(of.map((values) => values[eye] as number) as [number, number, number])),
    ) as [ReturnType<typeof matrix>, ReturnType<typeof matrix>];
    const [xx, xy, yy] = later.map((power, i) => power - (earlier[i] as number)) as [number, number, number];
    const a = ((incision[eye] as number) * Math.PI) / 180;
    const [c, s] = [Math.cos(a), Math.sin(a)];
    const onIt = xx * c * c + 2 * xy * s * c + yy * s * s;
    return 2 * onIt - (xx + yy);
  });
  expect(along.reduce((sum, one) => sum + one, 0) / along.length).toBeCloseTo(
    value('induced_along_incision', 'mean'),
    10,
  );
});

it('pools induced astigmatism in the incision frame only: the fixed frame has right and left eyes apart', () => {
  expect(results.find('induced_corneal_cylinder', 'all', 'n')).toBeUndefined();
  const sides = ['right', 'left'].map((eye) => value('induced_corneal_cylinder', 'n', `eye=${eye}`));
  expect(Math.min(...sides)).toBeGreaterThan(0);
  expect(value('induced_in_incision_frame', 'mean_magnitude')).toBeGreaterThanOrEqual(
    value('induced_in_incision_frame', 'centroid_magnitude'),
  );
});

it('builds a prediction from the cornea only where an effect of the incision is declared, and only without a toric lens', async () => {
  const text = auditText().replace(
    'predictions: { primary_formula: planned }',
    'predictions: { primary_formula: planned, incision_effect: { magnitude: 0.3, at: incision } }',
  );
  const declared = (await auditOf(text, committedFiles())).derived.eyes;
  const [plain, built] = [column('predicted_residual_x'), numbersOf(declared, 'predicted_residual_x')];
  const lens = column('lens_cylinder');
  const before = column('corneal_cylinder_before_x');
  const incision = column('incision_axis');
  let met = 0;
  for (const eye of plain.keys()) {
    if ((lens[eye] as number) > 0 || !Number.isNaN(plain[eye] as number)) {
      expect(built[eye]).toEqual(plain[eye]);
    } else if (!Number.isNaN(before[eye] as number)) {
      met++;
      const flattened = 0.3 * Math.cos(((incision[eye] as number) * Math.PI) / 90);
      const expected = (before[eye] as number) - flattened;
      if (Number.isNaN(expected)) expect(built[eye]).toBeNaN();
      else expect(built[eye]).toBeCloseTo(expected, 12);
    }
  }
  expect(met).toBeGreaterThan(100);
});
