import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../src/statistics/estimate.js';
import { meanInterval } from '../../src/statistics/mean.js';
import { regression } from '../../src/statistics/regression.js';
import { smoothOf, straightLine } from '../../src/statistics/smooth.js';

// 80 eyes of 64 patients, 16 of them with both eyes.
const eyes = Array.from({ length: 80 }, (_, i) => i);
const x = Float64Array.from(eyes, (i) => 21 + ((i * 37) % 101) / 12);
const y = Float64Array.from(
  eyes,
  (i) => 0.3 * Math.sin(x[i] as number) + 0.05 * ((x[i] as number) - 24) + (((i * 53) % 17) - 8) / 20,
);
const patients = Int32Array.from(eyes, (i) => (i < 32 ? Math.floor(i / 2) : i - 16));

/** Value and limits of an estimate. */
const told = (found: Estimate | undefined) => [found?.value, found?.low, found?.high];

function expectClose(found: readonly (number | undefined)[], expected: readonly number[]): void {
  found.forEach((value, i) => {
    expect(Math.abs((value as number) - (expected[i] as number))).toBeLessThan(1e-10);
  });
}

// R 4.2.2: b = solve(X'X, X'y), r = y - Xb, S = rowsum(X*r, patient), V = G/(G - p) (X'X)^-1 S'S (X'X)^-1, qt(0.975, G - p);
// X = cbind(1, x), and cbind(1, splines::ns(x, df = 3)), whose knots it sets at 23.80556 and 26.55556.
describe('straightLine', () => {
  const line = straightLine(x, y, patients);

  it('has the slope, the height, their intervals and r² of R', () => {
    expectClose(told(line?.slope(0.95)), [0.063669510348, 0.033042247278, 0.094296773418]);
    expectClose(told(line?.at(23.5, 0.95)), [-0.059149807286, -0.145260946586, 0.026961332014]);
    expect(line?.rSquared).toBeCloseTo(0.196318687202, 10);
  });

  it('does not exist without eyes, or where all have one x', () => {
    expect(straightLine(new Float64Array(0), new Float64Array(0), new Int32Array(0))).toBeUndefined();
    expect(straightLine(new Float64Array(9).fill(23), y.slice(0, 9), patients.slice(0, 9))).toBeUndefined();
  });

  it('has no interval below 5 patients', () => {
    const four = straightLine(x.slice(0, 8), y.slice(0, 8), patients.slice(0, 8))?.slope(0.95);
    expect(four).toMatchObject({ low: undefined, notes: ['not-estimable:few-patients'], patients: 4 });
  });

  it('is the same whatever the order of eyes', () => {
    const turned = straightLine(x.slice().reverse(), y.slice().reverse(), patients.slice().reverse());
    expectClose(told(turned?.slope(0.95)), told(line?.slope(0.95)) as number[]);
  });
});

describe('smoothOf', () => {
  it.each([
    [21, [0.120112195755, -0.064938464416, 0.305162855925]],
    [23.5, [-0.31803508494, -0.424725194369, -0.211344975511]],
    [25, [0.004744923801, -0.082099183515, 0.091589031118]],
    [29, [0.030690081406, -0.118524862681, 0.179905025493]],
  ] as const)('at %d mm is the natural spline of R with its interval', (place, expected) => {
    const smooth = smoothOf(x, y, patients);
    expect(smooth?.kind).toBe('natural-spline');
    expectClose(told(smooth?.at(place, 0.95)), expected);
  });

  it('is a straight line below 60 patients, and where knots fall together', () => {
    const first = 75; // 59 patients
    const few = smoothOf(x.slice(0, first), y.slice(0, first), patients.slice(0, first));
    expect(few?.kind).toBe('straight-line');
    const line = straightLine(x.slice(0, first), y.slice(0, first), patients.slice(0, first));
    expect(few?.at(24, 0.95)).toEqual(line?.at(24, 0.95));
    expect(smoothOf(x.slice(0, 76), y.slice(0, 76), patients.slice(0, 76))?.kind).toBe('natural-spline');
    // More than two thirds of the eyes at one length: both inner knots lie there.
    const same = x.map((value, i) => (i < 60 ? 24 : value));
    expect(smoothOf(same, y, patients)?.kind).toBe('straight-line');
  });

  it('meets a straight line exactly, without a band', () => {
    const straight = x.map((value) => 2 - 0.1 * value);
    const found = smoothOf(x, straight, patients)?.at(26.3, 0.95);
    expect(found?.value).toBeCloseTo(2 - 2.63, 10);
    expect((found?.high as number) - (found?.low as number)).toBeLessThan(1e-10);
  });
});

describe('regression', () => {
  it('with one column of 1 is the mean and its interval', () => {
    const fit = regression([new Float64Array(80).fill(1)], y, patients, 'straight-line-patient-t');
    const mean = meanInterval(y, patients, 0.95);
    expectClose(told(fit?.at([1], 0.95)), told(mean) as number[]);
    expectClose(told(mean), [0.047098688108, -0.024449303325, 0.118646679541]); // R 4.2.2, the same call
  });

  it('refuses columns of different lengths and values that are none', () => {
    const one = new Float64Array(80).fill(1);
    expect(() => regression([one.slice(1)], y, patients, 'straight-line-patient-t')).toThrow('columns of 79 and 80');
    expect(() =>
      regression(
        [one],
        y.map(() => Number.NaN),
        patients,
        'straight-line-patient-t',
      ),
    ).toThrow('NaN');
  });

  it('is not made where a column follows from those before it', () => {
    expect(regression([x, x.map((value) => 2 * value)], y, patients, 'straight-line-patient-t')).toBeUndefined();
  });
});
