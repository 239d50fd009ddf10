import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centroid } from '../../src/statistics/centroid.js';
import { chiSquareQuantile } from '../../src/statistics/distributions.js';
import { type Covariance, ellipse, squaredDistance } from '../../src/statistics/ellipse.js';
import {
  f2Upper,
  f2UpperQuantile,
  hotellingOf,
  hotellingOneSample,
  hotellingPaired,
  hotellingScale,
  hotellingTwoSample,
} from '../../src/statistics/hotelling.js';
import { referencePresent, referenceText } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

interface Cloud {
  x: Float64Array;
  y: Float64Array;
}

/** Patients 1 … n, one eye each. */
const single = (n: number): Int32Array => Int32Array.from({ length: n }, (_, i) => i);

/** Plus cylinder × axis, or magnitude at steep meridian, as points of the doubled-angle plane. */
function cloud(pairs: readonly (readonly [cylinder: number, axis: number])[]): Cloud {
  const doubled = (axis: number): number => (axis * Math.PI) / 90;
  return {
    x: Float64Array.from(pairs, ([cylinder, axis]) => cylinder * Math.cos(doubled(axis))),
    y: Float64Array.from(pairs, ([cylinder, axis]) => cylinder * Math.sin(doubled(axis))),
  };
}

const rows = (points: readonly (readonly [number, number])[]): Cloud => ({
  x: Float64Array.from(points, ([x]) => x),
  y: Float64Array.from(points, ([, y]) => y),
});

// Optics page section 3, data A, and ids 3.* of shared/reference/optics-checks.csv: computed in R and again in Python.
const dataA = cloud([
  ...([
    [0.5, 10],
    [0.75, 172],
    [0.25, 95],
    [1.0, 160],
    [0, 0],
    [0.62, 25],
  ] as const),
  ...([
    [0.38, 150],
    [0.87, 5],
    [0.5, 178],
    [0.25, 88],
    [1.12, 170],
    [0.75, 20],
  ] as const),
]);

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
    const left = [1, 3, 6, 8, 9, 11];
    const y = dataA.y.map((value, i) => (left.includes(i) ? -value : value));
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

  it('has the chi-square ellipse 1.0928 by 0.5601', () => {
    const spread = { xx: 0.194564, xy: -0.025967, yy: 0.057096 };
    const data = ellipse(spread, chiSquareQuantile(0.95, 2));
    expect(data.major).toBeCloseTo(1.0928, 4);
    expect(data.minor).toBeCloseTo(0.5601, 4);
    expect(ellipse(spread, 1).major ** 2).toBeCloseTo(0.199305, 6);
    expect(ellipse(spread, 1).minor ** 2).toBeCloseTo(0.052355, 6);
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
  const points = rows([
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
          const { x, y } = rows(list.map(([a, b]) => [a / 8, b / 8] as const));
          const found = centroid(x, y, single(x.length), 0.95);
          if (!found.test) return expect(found.notes.join()).toContain('degenerate');
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

describe('Hotelling tests', () => {
  const paired: [Cloud, Cloud] = [
    cloud([
      [1.25, 88],
      [0.8, 95],
      [1.6, 80],
      [2.1, 100],
      [0.95, 5],
      [1.4, 92],
      [1.75, 85],
      [0.6, 170],
    ]),
    cloud([
      [1.0, 92],
      [0.7, 100],
      [1.1, 78],
      [1.85, 104],
      [1.2, 8],
      [1.05, 95],
      [1.55, 80],
      [0.9, 175],
    ]),
  ];

  it('paired, as on the optics page: ids 3.pair.*', () => {
    const found = hotellingPaired(...paired);
    expect(found.t2).toBeCloseTo(61.0118035865, 8);
    expect(found.f).toBeCloseTo(26.1479158228, 8);
    expect(found.df2).toBe(6);
    expect(found.p).toBeCloseTo(0.001090288, 9);
  });

  it('of two samples, as on the optics page: ids 3.two.*', () => {
    const second = cloud([
      [0.3, 85],
      [0.45, 100],
      [0.6, 70],
      [0.25, 120],
      [0.8, 92],
      [0.55, 78],
      [0.4, 105],
    ]);
    const found = hotellingTwoSample(dataA, second);
    expect(found.t2).toBeCloseTo(24.6289088214, 8);
    expect(found.f).toBeCloseTo(11.5900747395, 8);
    expect(found.df2).toBe(16);
    expect(found.p).toBeCloseTo(0.0007734481, 9);
  });

  // Standards page, checks 41 and 42: Johnson & Wichern, example 5.1 and solution 5.1.
  it('one sample by hand: T² = 7/9 and 150/11', () => {
    const first = rows([
      [6, 9],
      [10, 6],
      [8, 3],
    ]);
    expect(hotellingOneSample(first.x, first.y, 9, 5).t2).toBeCloseTo(7 / 9, 12);
    const second = rows([
      [2, 12],
      [8, 9],
      [6, 9],
      [8, 10],
    ]);
    expect(hotellingOneSample(second.x, second.y, 7, 11).t2).toBeCloseTo(150 / 11, 12);
    // Its critical value: 2·3/2·F(2, 2) at 0.05 = 57.
    expect(hotellingScale(0.95, 3)).toBeCloseTo(57, 10);
  });

  it.skipIf(!referencePresent)('one sample and paired, against base R', () => {
    const three = example('hotelling1-jw-3x2');
    const { x, y } = rows(three.input.X);
    const found = hotellingOneSample(x, y, three.input.mu[0], three.input.mu[1]);
    for (const [ours, theirs] of [
      [found.t2, three.expected.T2],
      [found.f, three.expected.F],
      [found.p, three.expected.p],
    ]) {
      expect(agrees(ours, theirs as number, three.tolerance)).toBe(true);
    }
    const { input, expected, tolerance } = example('hotelling-paired-effluent');
    const effluent = hotellingPaired(rows(input.state), rows(input.commercial));
    expect(agrees(effluent.t2, expected.T2, tolerance)).toBe(true);
    expect(agrees(effluent.p, expected.p, tolerance)).toBe(true);
  });

  it.skipIf(!referencePresent)('two samples from their summary: electricity use of Johnson and Wichern', () => {
    const { input, expected, tolerance } = example('hotelling2-electricity');
    const factor = 1 / input.n1 + 1 / input.n2;
    const [[xx, xy], [, yy]] = expected.S_pooled;
    const ofDifference: Covariance = { xx: xx * factor, xy: xy * factor, yy: yy * factor };
    const t2 = squaredDistance(input.m1[0] - input.m2[0], input.m1[1] - input.m2[1], ofDifference);
    expect(agrees(t2, expected.T2_pooled, tolerance)).toBe(true);
    const found = hotellingOf(t2, input.n1 + input.n2 - 2);
    expect(agrees(found.f, expected.F, tolerance)).toBe(true);
    expect(agrees(found.p, expected.p, tolerance)).toBe(true);
  });

  it.skipIf(!referencePresent)('ellipse of a difference: soap of Johnson and Wichern', () => {
    const { input, expected, tolerance } = example('ellipse-soap');
    // Equal sizes: the pooled covariance is the mean of both; 1/n₁ + 1/n₂ = 0.04.
    const mean = (i: 0 | 1, j: 0 | 1): number => ((input.S1[i][j] + input.S2[i][j]) / 2) * 0.04;
    const found = ellipse({ xx: mean(0, 0), xy: mean(0, 1), yy: mean(1, 1) }, hotellingScale(0.95, 98));
    expect(agrees(found.major, expected.semi_axes[0], tolerance)).toBe(true);
    expect(agrees(found.minor, expected.semi_axes[1], tolerance)).toBe(true);
    expect(agrees(found.tilt, expected.angle_deg_of_major_axis, tolerance)).toBe(true);
  });

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

  it('has the closed form of F with two numerator degrees: ids 3.f2q.*', () => {
    expect(f2UpperQuantile(0.05, 10)).toBeCloseTo(4.1028210151, 9);
    expect(f2UpperQuantile(0.05, 2)).toBeCloseTo(19, 10);
    expect(f2UpperQuantile(0.05, 1)).toBeCloseTo(199.5, 9);
    for (const m of [1, 2, 10, 588_000]) expect(f2Upper(f2UpperQuantile(0.05, m), m)).toBeCloseTo(0.05, 12);
    // Check 43 of the standards page: for many eyes 2·F tends to the chi-square 5.9915.
    expect(2 * f2UpperQuantile(0.05, 1e9)).toBeCloseTo(5.9915, 4);
  });

  it('refuses too few points, points on one line, and f below 0', () => {
    const two = rows([
      [0, 1],
      [1, 0],
    ]);
    expect(() => hotellingOneSample(two.x, two.y, 0, 0)).toThrow('hotellingOneSample: 2 points; expected 3 or more');
    const line = Float64Array.of(1, 2, 3);
    expect(() => hotellingOneSample(line, line, 0, 0)).toThrow('squaredDistance: the covariance has no inverse');
    expect(() => f2Upper(-1, 3)).toThrow('f2Upper: f is -1; expected 0 or above');
    expect(() => hotellingPaired(two, dataA)).toThrow('hotellingPaired: columns of 2 and 12; expected one length');
  });
});
