import { describe, expect, it } from 'vitest';
import { morganPitman } from '../../src/statistics/morgan-pitman.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

describe('morganPitman', () => {
  it.skipIf(!referencePresent)('has the HC4 test of sandwich 3.0.2', () => {
    const { input, expected, tolerance } = example('morgan-pitman');
    const found = morganPitman(Float64Array.from(input.x), Float64Array.from(input.y));
    expect(agrees(found?.t, expected.hc4.t, tolerance)).toBe(true);
    expect(found?.df).toBe(expected.hc4.df);
    expect(agrees(found?.p, expected.hc4.p, tolerance)).toBe(true);
  });

  // Standards page, check 57: Student's sleep data, X = group 1, Y = group 2.
  it('has slope −.06264, SE .08685 and p .4913 on the sleep data', () => {
    const found = morganPitman(
      Float64Array.of(0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2),
      Float64Array.of(1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4),
    );
    expect(found?.slope).toBeCloseTo(-0.06264, 5);
    expect(found?.standardError).toBeCloseTo(0.08685, 5);
    expect(found?.p).toBeCloseTo(0.4913, 4);
  });

  it('does not exist below 3 eyes, or where sums or differences do not vary', () => {
    expect(morganPitman(Float64Array.of(1, 2), Float64Array.of(2, 4))).toBeUndefined();
    expect(morganPitman(Float64Array.of(1, 2, 3), Float64Array.of(0, 1, 2))).toBeUndefined();
    expect(morganPitman(Float64Array.of(1, 2, 3), Float64Array.of(-1, -2, -3))).toBeUndefined();
  });

  it('refuses columns of two lengths', () => {
    expect(() => morganPitman(Float64Array.of(1, 2, 3), Float64Array.of(1))).toThrow(
      'morganPitman: columns of 3 and 1',
    );
  });
});
