import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { funnelLimits } from '../../src/statistics/funnel.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

describe.skipIf(!referencePresent)('limits of a funnel against R 4.2.2 (qbinom, pbinom)', () => {
  it('agree at every size and level', () => {
    const { input, expected, tolerance } = example('funnel-binomial');
    for (const [i, n] of (input.n as number[]).entries()) {
      for (const [level, name] of [
        [0.95, '95'],
        [0.998, '99.8'],
      ] as const) {
        const [low, high] = funnelLimits(input.target, n, level);
        expect(agrees(low, expected[`lower_${name}`][i], tolerance), `${n} ${name}`).toBe(true);
        expect(agrees(high, expected[`upper_${name}`][i], tolerance), `${n} ${name}`).toBe(true);
      }
    }
  });
});

// The same values of R 4.2.2, copied for n = 100 at a target of 0.8.
describe('limits of a funnel', () => {
  it('are those of R for 100 eyes at a target of 80 %', () => {
    expect(funnelLimits(0.8, 100, 0.95)[0]).toBeCloseTo(0.713523914966408, 9);
    expect(funnelLimits(0.8, 100, 0.95)[1]).toBeCloseTo(0.870257767284931, 9);
    expect(funnelLimits(0.8, 100, 0.998)[0]).toBeCloseTo(0.663234148483358, 9);
  });

  it('lie between those of the neighbouring whole numbers, around the target, the wider level outside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (n, target) => {
          const [low, high] = funnelLimits(target, n, 0.95);
          const [least, most] = funnelLimits(target, n, 0.998);
          expect(least <= low && low < target && target < high && high <= most).toBe(true);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('refuse fewer than one eye, and a target of none or all', () => {
    expect(() => funnelLimits(0.8, 0.5, 0.95)).toThrow(RangeError);
    expect(() => funnelLimits(1, 10, 0.95)).toThrow(/funnelLimits: target 1, n 10/);
  });
});
