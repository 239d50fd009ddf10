import { describe, expect, it } from 'vitest';
import { chiSquareQuantile } from '../../src/statistics/distributions.js';
import { ellipse, squaredDistance } from '../../src/statistics/ellipse.js';
import { hotellingScale } from '../../src/statistics/hotelling.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

describe('ellipse', () => {
  // Standards page, check 45, set E.
  it('has the chi-square ellipse 1.0928 by 0.5601', () => {
    const spread = { xx: 0.194564, xy: -0.025967, yy: 0.057096 };
    const data = ellipse(spread, chiSquareQuantile(0.95, 2));
    expect(data.major).toBeCloseTo(1.0928, 4);
    expect(data.minor).toBeCloseTo(0.5601, 4);
    expect(ellipse(spread, 1).major ** 2).toBeCloseTo(0.199305, 6);
    expect(ellipse(spread, 1).minor ** 2).toBeCloseTo(0.052355, 6);
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

  it('lies flat along x, upright along y, and is a circle without direction', () => {
    expect(ellipse({ xx: 4, xy: 0, yy: 1 }, 1)).toEqual({ major: 2, minor: 1, tilt: 0 });
    expect(ellipse({ xx: 1, xy: 0, yy: 4 }, 1)).toEqual({ major: 2, minor: 1, tilt: 90 });
    expect(ellipse({ xx: 1, xy: 0, yy: 1 }, 9)).toEqual({ major: 3, minor: 3, tilt: 0 });
  });

  it('has distance √k of its own axes', () => {
    const covariance = { xx: 2, xy: 0.7, yy: 1 };
    const { major, minor, tilt } = ellipse(covariance, 5);
    const angle = (tilt * Math.PI) / 180;
    expect(squaredDistance(major * Math.cos(angle), major * Math.sin(angle), covariance)).toBeCloseTo(5, 12);
    expect(squaredDistance(-minor * Math.sin(angle), minor * Math.cos(angle), covariance)).toBeCloseTo(5, 12);
  });
});
