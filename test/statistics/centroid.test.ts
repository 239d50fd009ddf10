import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centroid } from '../../src/statistics/centroid.js';
import { chiSquareQuantile } from '../../src/statistics/distributions.js';
import { ellipse } from '../../src/statistics/ellipse.js';
import { hotellingOneSample } from '../../src/statistics/hotelling.js';
import { referencePresent, referenceText } from '../shared-reference.js';
import { single } from './made-up-eyes.js';
import { cloud, dataA, leftOfA, pointsOf } from './made-up-points.js';
import { agrees, example } from './reference-examples.js';

describe('centroid of data A of the optics page, one eye a patient', () => {
  const found = centroid(dataA.x, dataA.y, single(12), 0.95);

  it('lies at (0.419361, −0.028616) with SDs 0.421613 and 0.332290', () => {
    expect(found.x).toBeCloseTo(0.4193605192, 10);
    expect(found.y).toBeCloseTo(-0.0286163963, 10);
    expect(found.sdX).toBeCloseTo(0.4216129341, 10);
    expect(found.sdY).toBeCloseTo(0.3322898726, 10);
    expect(found.covariance).toBeCloseTo(-0.0271031376, 10);
    expect(found).toMatchObject({ n: 12, patients: 12, method: 'hotelling-patient', notes: [] });
  });

  it('has the regions of the mean and of the next eye', () => {
    expect(found.region?.major).toBeCloseTo(0.3753558545, 9);
    expect(found.region?.minor).toBeCloseTo(0.2754411576, 9);
    expect(found.region?.tilt).toBeCloseTo(-19.4162180994, 8);
    expect(found.eyesRegion?.major).toBeCloseTo(1.35336478, 9);
    expect(found.eyesRegion?.minor).toBeCloseTo(0.9931172172, 9);
    expect(found.eyesRegion?.tilt).toBeCloseTo(-19.4162180994, 8);
    expect(found.inside).toBe(12);
  });

  it('differs from zero by Hotelling’s test', () => {
    expect(found.test?.t2).toBeCloseTo(12.0130112118, 9);
    expect(found.test?.f).toBeCloseTo(5.4604596417, 9);
    expect(found.test?.df2).toBe(10);
    expect(found.test?.p).toBeCloseTo(0.0249514725, 9);
  });

  it('with the left eyes mirrored: ids 3.flip.*', () => {
    const y = dataA.y.map((value, i) => (leftOfA.includes(i) ? -value : value));
    const mirrored = centroid(dataA.x, y, single(12), 0.95);
    expect(mirrored.y).toBeCloseTo(0.0903758856, 9);
    expect(mirrored.sdY).toBeCloseTo(0.3199993356, 9);
    expect(mirrored.test?.t2).toBeCloseTo(12.8268596052, 8);
    expect(mirrored.test?.p).toBeCloseTo(0.0209714953, 9);
    expect(mirrored.region?.major).toBeCloseTo(0.3656587473, 9);
    expect(mirrored.region?.tilt).toBeCloseTo(0.0370581603, 8);
  });
});

// Standards page, checks 44 to 46, set E (magnitude at steep meridian), one eye a patient.
describe('centroid of set E of the standards page', () => {
  const setE = cloud([
    ...([
      [0.5, 90],
      [0.75, 100],
      [0.25, 10],
      [1.0, 85],
      [0.6, 95],
    ] as const),
    ...([
      [0.4, 170],
      [0.9, 75],
      [0.3, 120],
      [0.55, 88],
      [0.7, 105],
    ] as const),
  ]);
  const found = centroid(setE.x, setE.y, single(10), 0.95);

  it('has the printed mean, SDs, regions and test', () => {
    expect(found.x).toBeCloseTo(-0.425396, 6);
    expect(found.y).toBeCloseTo(-0.03598, 6);
    expect(found.sdX).toBeCloseTo(0.4411, 4);
    expect(found.sdY).toBeCloseTo(0.2389, 4);
    expect(found.covariance).toBeCloseTo(-0.025967, 6);
    expect(Math.hypot(found.sdX as number, found.sdY as number)).toBeCloseTo(0.5017, 4);
    expect(found.eyesRegion?.major).toBeCloseTo(1.4831, 4);
    expect(found.eyesRegion?.minor).toBeCloseTo(0.7601, 4);
    expect(found.region?.major).toBeCloseTo(0.4472, 4);
    expect(found.region?.minor).toBeCloseTo(0.2292, 4);
    // Printed as 169.65, the same line.
    expect((found.region?.tilt as number) + 180).toBeCloseTo(169.65, 2);
    expect(found.test?.t2).toBeCloseTo(10.9051, 4);
    expect(found.test?.f).toBeCloseTo(4.8467, 4);
    expect(found.test?.p).toBeCloseTo(0.04179, 5);
  });

  // Check 47: the mean magnitude is another number.
  it('has a magnitude of 0.4269, not the mean magnitude 0.5950', () => {
    expect(Math.hypot(found.x as number, found.y as number)).toBeCloseTo(0.4269, 4);
  });
});

describe.skipIf(!referencePresent)('the small series of shared/reference/vector-examples.json (R 4.2.2)', () => {
  it('has the same centroid, spread, regions and test', () => {
    const { series } = JSON.parse(referenceText('vector-examples.json'));
    const found = centroid(Float64Array.from(series.x), Float64Array.from(series.y), single(20), 0.95);
    expect(agrees(found.x, series.centroid.x, 1e-12)).toBe(true);
    expect(agrees(found.y, series.centroid.y, 1e-12)).toBe(true);
    expect(agrees(found.sdX, series.sd_x, 1e-12)).toBe(true);
    expect(agrees(found.sdY, series.sd_y, 1e-12)).toBe(true);
    expect(agrees(found.covariance, series.cov_xy, 1e-12)).toBe(true);
    for (const [ours, theirs] of [
      [found.region, series.ellipse_mean_95_F],
      [found.eyesRegion, series.ellipse_new_obs_95_F],
    ] as const) {
      expect(agrees(ours?.major, theirs.semi_axes[0], 1e-10)).toBe(true);
      expect(agrees(ours?.minor, theirs.semi_axes[1], 1e-10)).toBe(true);
      expect(agrees(ours?.tilt, theirs.angle_deg, 1e-10)).toBe(true);
    }
    expect(agrees(found.test?.t2, series.hotelling_T2_vs_0, 1e-10)).toBe(true);
    expect(agrees(found.test?.p, series.hotelling_p, 1e-10)).toBe(true);
  });
});

describe('centroid with both eyes, worked by hand', () => {
  const points = pointsOf([
    [1, 0],
    [0, 2],
    [-1, 1],
    [2, -1],
    [3, 3],
  ]);
  const pairs = Int32Array.of(1, 1, 2, 2, 3, 3, 4, 4, 5, 5);
  const twice = (values: Float64Array): Float64Array => Float64Array.from([...values].flatMap((v) => [v, v]));

  it('fellow eyes equal: region and test are those of the five patients', () => {
    const five = centroid(points.x, points.y, single(5), 0.95);
    const ten = centroid(twice(points.x), twice(points.y), pairs, 0.95);
    expect(ten.test?.t2).toBeCloseTo(five.test?.t2 as number, 12);
    expect(ten.test?.p).toBeCloseTo(five.test?.p as number, 12);
    expect(ten.region?.major).toBeCloseTo(five.region?.major as number, 12);
    expect(ten).toMatchObject({ n: 10, patients: 5, notes: ['few-patients'] });
  });

  it('fellow eyes cancelling: the centroid has no region, though the eyes have one', () => {
    const mirror = (values: Float64Array): Float64Array => Float64Array.from([...values].flatMap((v) => [v, -v]));
    const found = centroid(mirror(points.x), mirror(points.y), pairs, 0.95);
    expect(found).toMatchObject({ x: 0, y: 0, test: undefined, notes: ['few-patients', 'degenerate:patient-sums'] });
    expect(found.region).toMatchObject({ major: 0, minor: 0 });
    expect(found.eyesRegion?.minor).toBeGreaterThan(0);
  });

  it('one pair among singles: its two deviations are added before the products are formed', () => {
    // Mean (1, 1) of six points; the pair (2, 1) and (0, 1) cancels. Sums: 0 | (−1, 2) | (2, −1) | (−1, −1) | (0, 0).
    const found = centroid(
      Float64Array.of(2, 0, 0, 3, 0, 1),
      Float64Array.of(1, 1, 3, 0, 0, 1),
      Int32Array.of(1, 1, 2, 3, 4, 5),
      0.95,
    );
    // V = 5/4 · [6 −3; −3 6]/36.
    expect(found.ofCentroid?.xx).toBeCloseTo((5 / 4) * (6 / 36), 14);
    expect(found.ofCentroid?.xy).toBeCloseTo((5 / 4) * (-3 / 36), 14);
    expect(found.ofCentroid?.yy).toBeCloseTo((5 / 4) * (6 / 36), 14);
    // d′V⁻¹d of (1, 1): V has the eigenvalue 5/4·3/36 along it, 2/(15/144) = 19.2.
    expect(found.test?.t2).toBeCloseTo(19.2, 10);
  });
});

describe('centroid, edges', () => {
  it('equals the textbook Hotelling test to 1e-12 where each patient has one eye', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -16, max: 16 }), fc.integer({ min: -16, max: 16 })), {
          minLength: 5,
          maxLength: 30,
        }),
        (list) => {
          const { x, y } = pointsOf(list.map(([a, b]) => [a / 8, b / 8] as const));
          const found = centroid(x, y, single(x.length), 0.95);
          if (!found.test) {
            expect(found.notes.join()).toContain('degenerate');
            return;
          }
          const textbook = hotellingOneSample(x, y, 0, 0);
          expect(found.test.t2).toBeCloseTo(textbook.t2, 12 - Math.ceil(Math.log10(1 + textbook.t2)));
          expect(found.test.p).toBeCloseTo(textbook.p, 12);
        },
      ),
    );
  });

  it('points on one line have a segment for an ellipse and no test', () => {
    const x = Float64Array.of(-2, -1, 0, 1, 2, 6);
    const found = centroid(
      x,
      x.map((v) => 2 * v),
      single(6),
      0.95,
    );
    expect(found.notes).toEqual(['few-patients', 'degenerate:points-on-a-line']);
    expect(found.test).toBeUndefined();
    expect(found.eyesRegion?.minor).toBe(0);
    expect(found.eyesRegion?.tilt).toBeCloseTo((Math.atan(2) * 180) / Math.PI, 12);
    // Prediction form: k = 2·5·7/(6·4)·F(2, 4) = 2.9167·6.9443 = 20.25; all lie within √k SDs along the line.
    expect(found.inside).toBe(6);
  });

  it('equal points are one point', () => {
    const found = centroid(new Float64Array(6).fill(0.25), new Float64Array(6), single(6), 0.95);
    expect(found).toMatchObject({ x: 0.25, y: 0, inside: 6, notes: ['few-patients', 'degenerate:identical-points'] });
    expect(found.eyesRegion).toMatchObject({ major: 0, minor: 0 });
  });

  it('below 5 patients is a mean with SDs; one eye a point; none nothing', () => {
    const four = centroid(Float64Array.of(1, 2, 3, 4), Float64Array.of(0, 1, 0, 1), single(4), 0.95);
    expect(four).toMatchObject({ x: 2.5, y: 0.5, region: undefined, eyesRegion: undefined, test: undefined });
    expect(four.sdX).toBeCloseTo(Math.sqrt(5 / 3), 14);
    expect(four.notes).toEqual(['not-estimable:few-patients']);
    expect(centroid(Float64Array.of(1), Float64Array.of(2), single(1), 0.95)).toMatchObject({
      x: 1,
      y: 2,
      sdX: undefined,
    });
    expect(centroid(new Float64Array(), new Float64Array(), single(0), 0.95)).toMatchObject({
      x: undefined,
      n: 0,
      notes: ['not-estimable:no-eyes'],
    });
  });

  it('turns with the plane: region, test and share inside do not depend on its direction', () => {
    const cos = Math.cos(0.7);
    const sin = Math.sin(0.7);
    const x = dataA.x.map((value, i) => cos * value - sin * (dataA.y[i] as number));
    const y = dataA.x.map((value, i) => sin * value + cos * (dataA.y[i] as number));
    const patients = Int32Array.of(1, 1, 2, 3, 4, 4, 5, 6, 7, 8, 8, 9);
    const plain = centroid(dataA.x, dataA.y, patients, 0.9);
    const turned = centroid(x, y, patients, 0.9);
    expect(turned.region?.major).toBeCloseTo(plain.region?.major as number, 12);
    expect(turned.region?.minor).toBeCloseTo(plain.region?.minor as number, 12);
    expect(turned.region?.tilt).toBeCloseTo((plain.region?.tilt as number) + (0.7 * 180) / Math.PI, 9);
    expect(turned.test?.p).toBeCloseTo(plain.test?.p as number, 12);
    expect(turned.inside).toBe(plain.inside);
  });
});

describe.skipIf(!referencePresent)('centroid of the microwave ovens of Johnson and Wichern', () => {
  it.skipIf(!referencePresent)('four scalings of one ellipse: microwave ovens of Johnson and Wichern', () => {
    const { input, expected, tolerance } = example('ellipse-microwave');
    const x = Float64Array.from(input.x_raw_closed, (v: number) => v ** 0.25);
    const y = Float64Array.from(input.y_raw_open, (v: number) => v ** 0.25);
    const found = centroid(x, y, single(42), 0.95);
    expect(agrees(found.x, expected.mean[0], tolerance)).toBe(true);
    expect(agrees(found.covariance, expected.cov[0][1], tolerance)).toBe(true);
    expect(agrees(found.region?.major, expected.mean_ellipse_F.semi_axes[0], tolerance)).toBe(true);
    expect(agrees(found.region?.minor, expected.mean_ellipse_F.semi_axes[1], tolerance)).toBe(true);
    expect(agrees(found.region?.tilt, expected.mean_ellipse_F.angle_deg_of_major_axis, tolerance)).toBe(true);
    const spread = { xx: expected.cov[0][0], xy: expected.cov[0][1], yy: expected.cov[1][1] };
    const data = ellipse(spread, chiSquareQuantile(0.95, 2));
    expect(agrees(data.major, expected.data_ellipse_chisq.semi_axes[0], tolerance)).toBe(true);
  });
});
