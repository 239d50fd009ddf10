import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holm } from '../../../src/statistics/cohorts/holm.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';

describe('holm', () => {
  // Standards page, check 56: R p.adjust.
  it('makes .04, .06, .06, .06 of .01, .02, .03, .04', () => {
    holm([0.01, 0.02, 0.03, 0.04]).forEach((p, i) => {
      expect(p).toBeCloseTo([0.04, 0.06, 0.06, 0.06][i] as number, 14);
    });
  });

  it.skipIf(!referencePresent).each(['padjust-bh1995', 'padjust-ties'])('is p.adjust of R 4.2.2: %s', (id) => {
    const { input, expected, tolerance } = example(id);
    const tested = input.p.filter((p: number | null) => p !== null);
    const adjusted = expected.holm.filter((p: number | null) => p !== null);
    holm(tested).forEach((p, i) => {
      expect(agrees(p, adjusted[i], tolerance)).toBe(true);
    });
  });

  it('keeps the order of the p values, never lowers one, and does not depend on their order', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 }), (p) => {
        const adjusted = holm(p);
        p.forEach((one, i) => {
          expect(adjusted[i] as number).toBeGreaterThanOrEqual(one);
          expect(adjusted[i] as number).toBeLessThanOrEqual(1);
        });
        expect(holm(p.toReversed()).toReversed()).toEqual(adjusted);
      }),
    );
  });

  it('refuses what is not a probability', () => {
    expect(() => holm([0.2, Number.NaN])).toThrow('holm: p is NaN; expected from 0 to 1');
  });
});
