import { describe, expect, it } from 'vitest';
import { quantile, sorted } from '../../src/statistics/quantile.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

describe('quantile', () => {
  it.skipIf(!referencePresent)('is type 7 of R 4.2.2', () => {
    const { input, expected, tolerance } = example('quantile-types');
    const ascending = sorted(Float64Array.from(input.x));
    input.p.forEach((p: number, i: number) => {
      expect(agrees(quantile(ascending, p), expected.type.t7[i], tolerance), `p = ${p}`).toBe(true);
    });
    expect(agrees(quantile(ascending, 0.75) - quantile(ascending, 0.25), expected.iqr_type7, tolerance)).toBe(true);
  });

  it('starts the quartiles of 1, 2, 3, 4 at 1.75 (type 2 would say 1.5)', () => {
    expect(quantile(Float64Array.of(1, 2, 3, 4), 0.25)).toBe(1.75);
  });

  it('refuses no values and levels outside 0 to 1', () => {
    expect(() => quantile(new Float64Array(), 0.5)).toThrow('quantile: no values; expected at least one');
    expect(() => quantile(Float64Array.of(1), 1.5)).toThrow('quantile: p is 1.5; expected from 0 to 1');
  });
});
