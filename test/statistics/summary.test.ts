import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { summary } from '../../src/statistics/summary.js';
import { referencePresent } from '../shared-reference.js';
import { opticsErrors } from './made-up-eyes.js';
import { digits, univariate, valuesOf } from './nist-univariate.js';

describe.skipIf(!referencePresent)('NIST StRD univariate sets (shared/reference/nist-strd.json)', () => {
  it('are all nine there', () => expect(univariate.length).toBe(9));

  // The recorded digits are what plain two-pass arithmetic on doubles reaches; NumAcc4 loses half of them in the input.
  it.each(univariate.map((set) => [set.id, set] as const))('%s has the certified mean and SD', (_, set) => {
    const found = summary(valuesOf(set));
    expect(found.n).toBe(set.n);
    expect(digits(found.mean, set.certified.mean)).toBeGreaterThanOrEqual(set.double_two_pass_LRE.mean - 1);
    expect(digits(found.sd, set.certified.sd_n_minus_1)).toBeGreaterThanOrEqual(set.double_two_pass_LRE.sd - 1);
  });
});

describe('summary', () => {
  it('gives the printed summary of the 20 prediction errors', () => {
    const { mean, sd, median, q25, q75, min, max, n } = summary(opticsErrors);
    expect(n).toBe(20);
    expect(mean).toBeCloseTo(0.076, 10);
    expect(sd).toBeCloseTo(0.7142563302, 10);
    expect(median).toBeCloseTo(0.1, 10);
    expect(q25).toBeCloseTo(-0.3425, 10);
    expect(q75).toBeCloseTo(0.31, 10);
    expect([min, max]).toEqual([-1.37, 2]);
  });

  it('does not sort the given column in place', () => {
    const values = Float64Array.of(3, 1, 2);
    summary(values);
    expect([...values]).toEqual([3, 1, 2]);
  });

  it('has nothing to say of no values, and no SD of one', () => {
    expect(summary(new Float64Array())).toMatchObject({ n: 0, sum: 0, mean: undefined, sd: undefined, max: undefined });
    expect(summary(Float64Array.of(0.5))).toMatchObject({ n: 1, mean: 0.5, sd: undefined, median: 0.5, q25: 0.5 });
  });

  it('refuses a missing value', () => {
    expect(() => summary(Float64Array.of(1, Number.NaN))).toThrow(
      new RangeError('sorted: value 1 is NaN; expected a finite number'),
    );
  });

  it('moves with a shift and grows with a scale; the order of eyes does not matter', () => {
    const values = fc.array(fc.integer({ min: -400, max: 400 }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(values, fc.integer({ min: -8, max: 8 }), (eighths, by) => {
        const plain = summary(Float64Array.from(eighths, (v) => v / 8));
        const moved = summary(Float64Array.from(eighths.toReversed(), (v) => v / 4 + by));
        expect(moved.mean).toBeCloseTo(2 * (plain.mean as number) + by, 10);
        expect(moved.sd).toBeCloseTo(2 * (plain.sd as number), 10);
        expect(moved.q25).toBeCloseTo(2 * (plain.q25 as number) + by, 10);
      }),
    );
  });
});
