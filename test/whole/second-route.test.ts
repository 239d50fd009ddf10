// A thousand made-up eyes through the whole audit, and by another way: power matrices, their means, eigenvalues and
// quadratic forms; no doubled angle and no function of the project.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toricAudit } from './toric-series.js';

const count = 1000;
const step = (min: number, max: number, of: number) =>
  fc.integer({ min: Math.round(min / of), max: Math.round(max / of) }).map((whole) => Number((whole * of).toFixed(2)));
const meridian = fc.integer({ min: 1, max: 180 });
const made = fc.record({
  sphere: step(-2, 2, 0.25),
  cylinder: step(-3, 0, 0.25),
  axis: meridian,
  flat: step(40, 44, 0.01),
  cylinderBefore: step(0.1, 3.5, 0.01),
  steepBefore: meridian,
  flatAfter: step(40, 44, 0.01),
  cylinderAfter: step(0.1, 3.5, 0.01),
  steepAfter: meridian,
  incision: fc.integer({ min: 0, max: 359 }),
  label: fc.constantFrom(1.5, 2.25, 3),
  intended: meridian,
  turn: fc.integer({ min: -15, max: 15 }),
  residual: step(0, 0.8, 0.01),
  residualAxis: meridian,
});
const eyes = fc.sample(made, { seed: 20260101, numRuns: count });
type Eye = (typeof eyes)[number];
const vertex = 12;
const ratio = 1.46;
const observed = ({ intended, turn }: Eye): number => ((intended + turn + 179) % 180) + 1;

const { results } = await toricAudit(
  eyes.map((eye, i) => ({
    ...eye,
    patient: `G${String(i).padStart(4, '0')}`,
    side: 'R' as const,
    before: [eye.flat, eye.cylinderBefore, eye.steepBefore],
    after: [eye.flatAfter, eye.cylinderAfter, eye.steepAfter],
    observed: observed(eye),
  })),
  { more: `policies: { lens_plane_ratio: ${ratio} }` },
);
const value = (measure: string, statistic: string): number => results.get(measure, 'all', statistic).value as number;

// —— power matrices ——
/** A symmetric matrix: power along 0°, off the diagonal, power along 90°. */
type Matrix = readonly [xx: number, xy: number, yy: number];
const radians = (angle: number): number => (angle * Math.PI) / 180;
const plus = (a: Matrix, b: Matrix): Matrix => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (factor: number, a: Matrix): Matrix => [factor * a[0], factor * a[1], factor * a[2]];
const minus = (a: Matrix, b: Matrix): Matrix => plus(a, times(-1, b));
/** n n′ for the unit vector along a meridian. */
function along(angle: number): Matrix {
  const [c, s] = [Math.cos(radians(angle)), Math.sin(radians(angle))];
  return [c * c, c * s, s * s];
}
/** Sphere and a cylinder whose power lies across its axis (Long 1976). */
const lens = (sphere: number, cylinder: number, axis: number): Matrix =>
  plus([sphere, 0, sphere], times(cylinder, along(axis + 90)));
/** F (I − d F)⁻¹, written out. */
function atCornea([a, b, c]: Matrix): Matrix {
  const d = vertex / 1000;
  const [p, q, r] = [1 - d * a, -d * b, 1 - d * c];
  const determinant = p * r - q * q;
  return [(a * r - b * q) / determinant, (b * p - a * q) / determinant, (c * p - b * q) / determinant];
}
/** Difference of the two eigenvalues: the astigmatism. */
const astigmatism = ([a, b, c]: Matrix): number => Math.sqrt((a - c) ** 2 + 4 * b * b);
/** Direction of the greater eigenvalue, by its eigenvector; degrees in (0, 180]. */
function steep([a, b, c]: Matrix): number {
  const greater = (a + c + astigmatism([a, b, c])) / 2;
  const angle = (Math.atan2(greater - a, b) * 180) / Math.PI;
  return ((angle % 180) + 180) % 180 || 180;
}
/** n′ M n: the power along a meridian. */
const power = ([a, b, c]: Matrix, angle: number): number => {
  const [nn, ns, ss] = along(angle);
  return a * nn + 2 * b * ns + c * ss;
};
const meanOf = (all: readonly Matrix[]): Matrix => times(1 / all.length, all.reduce(plus));
const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;
/** Steep where the correction has its plus-cylinder axis: the matrix across. */
const across = ([a, b, c]: Matrix): Matrix => [c, -b, a];

const cornea = (flat: number, cylinder: number, meridianOfSteep: number): Matrix =>
  plus([flat, 0, flat], times(cylinder, along(meridianOfSteep)));
const before = eyes.map((eye) => cornea(eye.flat, eye.cylinderBefore, eye.steepBefore));
const after = eyes.map((eye) => across(atCornea(lens(eye.sphere, eye.cylinder, eye.axis))));
const predicted = eyes.map((eye) => times(eye.residual, along(eye.residualAxis)));
const changed = eyes.map((eye, i) =>
  minus(cornea(eye.flatAfter, eye.cylinderAfter, eye.steepAfter), before[i] as Matrix),
);
const pairwise = (one: readonly Matrix[], other: readonly Matrix[]): readonly Matrix[] =>
  one.map((matrix, i) => minus(matrix, other[i] as Matrix));
const target = pairwise(predicted, before);
const surgical = pairwise(after, before);
const misaligned = eyes.map((eye) => times(eye.label / ratio, minus(along(eye.intended), along(observed(eye)))));

it('reads all thousand eyes', () => {
  for (const measure of ['refractive_cylinder_after', 'induced_along_incision', 'difference_vector', 'split_rest']) {
    expect([measure, value(measure, 'n')]).toEqual([measure, count]);
  }
  expect(results.get('treatment', 'all', 'target_is_predicted').value).toBe(1);
});

describe('mean matrices give the centroids: magnitude and meridian by eigenvalue and eigenvector', () => {
  it.each([
    ['corneal_cylinder_before', before],
    ['refractive_cylinder_after', after],
    ['predicted_residual', predicted],
    ['cylinder_prediction_error', pairwise(after, predicted)],
    ['target_induced', target],
    ['surgically_induced', surgical],
    ['difference_vector', pairwise(target, surgical)],
    ['split_misalignment', misaligned],
    ['split_rest', pairwise(pairwise(after, predicted), misaligned)],
  ] as const)('%s', (measure, matrices) => {
    const centre = meanOf(matrices);
    expect(value(measure, 'centroid_magnitude')).toBeCloseTo(astigmatism(centre), 10);
    expect(value(measure, 'centroid_axis')).toBeCloseTo(steep(centre), 7);
    expect(value(measure, 'mean_magnitude')).toBeCloseTo(mean(matrices.map(astigmatism)), 10);
    // Var x + Var y is the mean squared astigmatism of what is left when the mean matrix is taken off.
    const left = matrices.map((matrix) => astigmatism(minus(matrix, centre)) ** 2);
    const spread = value(measure, 'sd_x') ** 2 + value(measure, 'sd_y') ** 2;
    expect(spread).toBeCloseTo((mean(left) * count) / (count - 1), 9);
    // The covariance with 45° is a difference of powers along 45° and 135° times one along 0° and 90°.
    const products = matrices.map((matrix) => {
      const off = minus(matrix, centre);
      return (power(off, 180) - power(off, 90)) * (power(off, 45) - power(off, 135));
    });
    expect(value(measure, 'covariance_xy')).toBeCloseTo((mean(products) * count) / (count - 1), 9);
  });
});

it('quadratic forms give what the incision did: power along it less power across, and twice the mixed form', () => {
  const flattened = changed.map((matrix, i) => {
    const at = (eyes[i] as Eye).incision;
    return power(matrix, at) - power(matrix, at + 90);
  });
  const torque = changed.map((matrix, i) => {
    const at = (eyes[i] as Eye).incision;
    return power(matrix, at + 45) - power(matrix, at - 45);
  });
  expect(value('induced_along_incision', 'mean')).toBeCloseTo(mean(flattened), 10);
  expect(value('induced_torque', 'mean')).toBeCloseTo(mean(torque), 10);
  expect(value('induced_in_incision_frame', 'centroid_magnitude')).toBeCloseTo(
    Math.hypot(mean(flattened), mean(torque)),
    10,
  );
  expect(value('induced_in_incision_frame', 'mean_magnitude')).toBeCloseTo(mean(changed.map(astigmatism)), 10);
});

describe('the treatment by matrices: eigenvalues, angles of eigenvectors, traces of products', () => {
  const judged = [...target.keys()].filter((i) => Math.round(1e6 * astigmatism(target[i] as Matrix)) >= 250000);
  const sizes = (matrices: readonly Matrix[], of: readonly number[]): readonly number[] =>
    of.map((i) => astigmatism(matrices[i] as Matrix));
  const all = [...target.keys()];
  /** Trace of the product of two matrices without their mean powers, twice: |A||B| cos of twice the angle. */
  const inner = (i: number): number => {
    const [t, s] = [target[i], surgical[i]] as [Matrix, Matrix];
    return (t[0] - t[2]) * (s[0] - s[2]) + 4 * t[1] * s[1];
  };

  it('magnitude of error, correction index by its geometric mean, index of success', () => {
    const error = all.map((i) => astigmatism(surgical[i] as Matrix) - astigmatism(target[i] as Matrix));
    expect(value('magnitude_of_error', 'mean')).toBeCloseTo(mean(error), 10);
    const ratios = judged.map((i) => astigmatism(surgical[i] as Matrix) / astigmatism(target[i] as Matrix));
    expect(value('correction_index', 'n')).toBe(judged.length);
    expect(value('correction_index', 'missing')).toBe(count - judged.length);
    const positive = ratios.filter((one) => one > 0);
    expect(value('correction_index', 'geometric_mean')).toBeCloseTo(Math.exp(mean(positive.map(Math.log))), 10);
    const success = sizes(pairwise(target, surgical), judged).map(
      (one, i) => one / (sizes(target, judged)[i] as number),
    );
    expect(value('index_of_success', 'mean')).toBeCloseTo(mean(success), 10);
  });

  it('flattening effect, flattening index and the angle of error', () => {
    const effect = (i: number): number => inner(i) / astigmatism(target[i] as Matrix);
    expect(value('flattening_index', 'mean')).toBeCloseTo(
      mean(judged.map((i) => effect(i) / astigmatism(target[i] as Matrix))),
      10,
    );
    const angle = (i: number): number => {
      const turn = steep(surgical[i] as Matrix) - steep(target[i] as Matrix);
      return ((((turn + 90) % 180) + 180) % 180) - 90;
    };
    const turned = judged.filter((i) => astigmatism(surgical[i] as Matrix) > 1e-9);
    expect(value('angle_of_error', 'mean')).toBeCloseTo(mean(turned.map(angle)), 7);
    expect(value('angle_of_error', 'mean_absolute')).toBeCloseTo(mean(turned.map((i) => Math.abs(angle(i)))), 7);
  });
});
