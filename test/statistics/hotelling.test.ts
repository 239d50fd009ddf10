import { describe, expect, it } from 'vitest';
import { type Covariance, squaredDistance } from '../../src/statistics/ellipse.js';
import {
  f2Upper,
  f2UpperQuantile,
  hotellingOf,
  hotellingOneSample,
  hotellingPaired,
  hotellingScale,
  hotellingTwoSample,
} from '../../src/statistics/hotelling.js';
import { referencePresent } from '../shared-reference.js';
import { type Cloud, cloud, dataA, pointsOf } from './made-up-points.js';
import { agrees, example } from './reference-examples.js';

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
    const first = pointsOf([
      [6, 9],
      [10, 6],
      [8, 3],
    ]);
    expect(hotellingOneSample(first.x, first.y, 9, 5).t2).toBeCloseTo(7 / 9, 12);
    const second = pointsOf([
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
    const { x, y } = pointsOf(three.input.X);
    const found = hotellingOneSample(x, y, three.input.mu[0], three.input.mu[1]);
    for (const [ours, theirs] of [
      [found.t2, three.expected.T2],
      [found.f, three.expected.F],
      [found.p, three.expected.p],
    ]) {
      expect(agrees(ours, theirs as number, three.tolerance)).toBe(true);
    }
    const { input, expected, tolerance } = example('hotelling-paired-effluent');
    const effluent = hotellingPaired(pointsOf(input.state), pointsOf(input.commercial));
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

  it('has the closed form of F with two numerator degrees: ids 3.f2q.*', () => {
    expect(f2UpperQuantile(0.05, 10)).toBeCloseTo(4.1028210151, 9);
    expect(f2UpperQuantile(0.05, 2)).toBeCloseTo(19, 10);
    expect(f2UpperQuantile(0.05, 1)).toBeCloseTo(199.5, 9);
    for (const m of [1, 2, 10, 588_000]) expect(f2Upper(f2UpperQuantile(0.05, m), m)).toBeCloseTo(0.05, 12);
    // Check 43 of the standards page: for many eyes 2·F tends to the chi-square 5.9915.
    expect(2 * f2UpperQuantile(0.05, 1e9)).toBeCloseTo(5.9915, 4);
  });

  it('refuses too few points, points on one line, and f below 0', () => {
    const two = pointsOf([
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
