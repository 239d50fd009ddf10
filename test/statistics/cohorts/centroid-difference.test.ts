import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centroidDifference, krishnamoorthyYu } from '../../../src/statistics/cohorts/centroid-difference.js';
import { recogniseDesign } from '../../../src/statistics/cohorts/design.js';
import { squaredDistance } from '../../../src/statistics/ellipse.js';
import { hotellingOf, hotellingPaired } from '../../../src/statistics/hotelling.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';

const codes = (n: number, from = 0): Int32Array => Int32Array.from({ length: n }, (_, i) => from + i);
const points = fc.array(fc.tuple(fc.integer({ min: -16, max: 16 }), fc.integer({ min: -16, max: 16 })), {
  minLength: 6,
  maxLength: 20,
});
const cloud = (list: readonly (readonly [number, number])[]) => ({
  x: Float64Array.from(list, ([x]) => x / 8),
  y: Float64Array.from(list, ([, y]) => y / 8),
});

describe('krishnamoorthyYu', () => {
  it.skipIf(!referencePresent)('has the degrees, F and p of base R: electricity use of Johnson and Wichern', () => {
    const { input, expected, tolerance } = example('hotelling2-electricity');
    const stratum = ([[xx, xy], [, yy]]: number[][] & [[number, number], [number, number]], n: number) => ({
      xx: xx / n,
      xy: xy / n,
      yy: yy / n,
      df: n - 1,
    });
    const strata = [stratum(input.S1, input.n1), stratum(input.S2, input.n2)] as const;
    const nu = krishnamoorthyYu(strata);
    expect(agrees(nu, expected.nu_krishnamoorthy_yu, tolerance)).toBe(true);
    const sum = { xx: strata[0].xx + strata[1].xx, xy: strata[0].xy + strata[1].xy, yy: strata[0].yy + strata[1].yy };
    const t2 = squaredDistance(input.m1[0] - input.m2[0], input.m1[1] - input.m2[1], sum);
    expect(agrees(t2, expected.T2_unequal, tolerance)).toBe(true);
    expect(agrees(hotellingOf(t2, nu).f, expected.F_krishnamoorthy_yu, tolerance)).toBe(true);
    expect(agrees(hotellingOf(t2, nu).p, expected.p_krishnamoorthy_yu, tolerance)).toBe(true);
  });

  it('gives a single stratum its own degrees, and refuses a sum without inverse', () => {
    expect(krishnamoorthyYu([{ xx: 2, xy: 0.5, yy: 1, df: 9 }])).toBeCloseTo(9, 12);
    expect(() => krishnamoorthyYu([{ xx: 1, xy: 1, yy: 1, df: 9 }])).toThrow('the summed covariance has no inverse');
  });
});

describe('centroidDifference', () => {
  it('is the paired Hotelling test to 1e-12 with one eye in each cohort', () => {
    fc.assert(
      fc.property(points, (list) => {
        const a = cloud(list);
        const b = cloud(list.map(([x, y], i) => [y - x + ((i * 7) % 5), x + ((i * 3) % 4)] as const));
        const found = centroidDifference(a, b, recogniseDesign(codes(list.length), codes(list.length)), 0.95);
        if (!found.test) {
          expect(found.notes).toContain('degenerate:patient-sums');
          return;
        }
        const paired = hotellingPaired(b, a);
        expect(found.test.t2 / (1 + paired.t2)).toBeCloseTo(paired.t2 / (1 + paired.t2), 10);
        expect(found.test.df2).toBeCloseTo(list.length - 2, 9);
        expect(found.test.p).toBeCloseTo(paired.p, 10);
      }),
    );
  });

  it('is the test of unequal covariances with one eye a patient, by hand', () => {
    // A: a cross of arm 1 about (1, 0); B: a cross of arm 2 about (0, 0), a fifth point in each centre.
    const cross = (arm: number, x: number) => ({
      x: Float64Array.of(x + arm, x - arm, x, x, x),
      y: Float64Array.of(0, 0, arm, -arm, 0),
    });
    const found = centroidDifference(cross(1, 1), cross(2, 0), recogniseDesign(codes(5), codes(5, 50)), 0.95);
    // S = 2·arm²/4·I, V = S/5: 0.1·I + 0.4·I; M = 0.2·I and 0.8·I; (tr M²) + (tr M)² = 6·m².
    const nu = 6 / ((6 * 0.04) / 4 + (6 * 0.64) / 4);
    expect(found.x).toBe(1);
    expect(found.ofDifference?.xx).toBeCloseTo(0.5, 14);
    expect(found.ofDifference?.xy).toBeCloseTo(0, 14);
    expect(found.test?.t2).toBeCloseTo(2, 12);
    expect(found.test?.df2).toBeCloseTo(nu - 1, 12);
    expect(found.test?.p).toBeCloseTo((1 + 2 / nu) ** (-(nu - 1) / 2), 12);
    expect(found.region?.major).toBeCloseTo(found.region?.minor as number, 12);
  });

  it('is the centroid of the patients’ differences in a mixed design of copied eyes', () => {
    const list = [
      [1, 2],
      [3, -1],
      [0, 4],
      [-2, 2],
      [5, 5],
      [1, -3],
    ] as const;
    const twice = list.flatMap((point) => [point, point]);
    const b = list.map(([x, y]) => [x * x, y - x] as const);
    const six = codes(6);
    const pairs = Int32Array.from(six, (g) => g);
    const once = centroidDifference(cloud(list), cloud(b), recogniseDesign(six, pairs), 0.95);
    const both = centroidDifference(
      cloud(twice),
      cloud(b),
      recogniseDesign(
        Int32Array.from({ length: 12 }, (_, i) => i >> 1),
        pairs,
      ),
      0.95,
    );
    expect(both.notes[0]).toBe('design:mixed');
    expect(once.notes[0]).toBe('design:fellow-eye');
    expect(both.test?.p).toBeCloseTo(once.test?.p as number, 12);
    expect(both.region?.tilt).toBeCloseTo(once.region?.tilt as number, 10);
  });

  it('turns round with the cohorts', () => {
    const a = cloud([
      [1, 2],
      [3, -1],
      [0, 4],
      [-2, 2],
      [5, 5],
      [1, -3],
    ]);
    const b = cloud([
      [2, 2],
      [1, -1],
      [6, 0],
      [-2, 1],
      [3, 3],
    ]);
    const patientsA = Int32Array.of(1, 1, 2, 3, 4, 5);
    const patientsB = Int32Array.of(1, 2, 7, 8, 9);
    const found = centroidDifference(a, b, recogniseDesign(patientsA, patientsB), 0.95);
    const turned = centroidDifference(b, a, recogniseDesign(patientsB, patientsA), 0.95);
    expect(turned.x).toBeCloseTo(-(found.x as number), 14);
    expect(turned.test?.p).toBeCloseTo(found.test?.p as number, 12);
  });

  it('has no test where all lies on one line, and counts only below 5 patients', () => {
    const line = { x: Float64Array.of(1, 2, 3, 4, 6), y: Float64Array.of(1, 2, 3, 4, 6) };
    const flat = centroidDifference(line, line, recogniseDesign(codes(5), codes(5, 9)), 0.95);
    expect(flat).toMatchObject({ x: 0, y: 0, test: undefined, region: undefined });
    expect(flat.notes).toContain('degenerate:patient-sums');
    const four = { x: Float64Array.of(1, 2, 3, 5), y: Float64Array.of(1, 0, 1, 0) };
    const few = centroidDifference(four, line, recogniseDesign(codes(4), codes(5, 9)), 0.95);
    expect(few).toMatchObject({ x: undefined, y: undefined, ofDifference: undefined, n: 9 });
  });
});
