import { describe, expect, it } from 'vitest';
import { oriented, undirectedVerdict, verdictOf } from '../../src/comparison/verdict.js';

// Every row of the verdict table of the statistics page, in its order, and both sides of each edge. D favours the
// compared cohort where positive; margin 0.05.
describe('the verdict on an interval', () => {
  it.each([
    ['L above 0', 0.01, 0.09, undefined, 'better'],
    ['L above 0, with a margin', 0.01, 0.03, 0.05, 'better'],
    ['U below 0, no margin', -0.09, -0.01, undefined, 'worse'],
    ['U at −M', -0.09, -0.05, 0.05, 'worse'],
    ['U below −M', -0.12, -0.06, 0.05, 'worse'],
    ['U below 0, L above −M', -0.04, -0.01, 0.05, 'worse-within-margin'],
    ['U below 0, L at −M', -0.05, -0.01, 0.05, 'worse-margin-not-excluded'],
    ['U below 0, L below −M', -0.09, -0.01, 0.05, 'worse-margin-not-excluded'],
    ['0 inside, no margin', -0.02, 0.03, undefined, 'no-difference-shown'],
    ['L at 0, no margin', 0, 0.03, undefined, 'no-difference-shown'],
    ['U at 0, no margin', -0.03, 0, undefined, 'no-difference-shown'],
    ['0 inside, both within M', -0.04, 0.04, 0.05, 'equivalent'],
    ['0 inside, U at M', -0.04, 0.05, 0.05, 'non-inferior'],
    ['0 inside, U above M', -0.04, 0.2, 0.05, 'non-inferior'],
    ['0 inside, L at −M', -0.05, 0.04, 0.05, 'inconclusive'],
    ['0 inside, L below −M', -0.2, 0.2, 0.05, 'inconclusive'],
    ['U at 0, L below −M', -0.2, 0, 0.05, 'inconclusive'],
  ] as const)('%s', (_, low, high, margin, verdict) => {
    expect(verdictOf({ low, high }, margin)).toBe(verdict);
  });

  it('turns where less is better', () => {
    expect(oriented({ low: -0.3, high: -0.1 }, 'lower')).toEqual({ low: 0.1, high: 0.3 });
    expect(oriented({ low: -0.3, high: -0.1 }, 'higher')).toEqual({ low: -0.3, high: -0.1 });
  });

  it('refuses an interval that is turned around, and a margin of nothing', () => {
    expect(() => verdictOf({ low: 1, high: 0 }, undefined)).toThrow(
      'verdictOf: from 1 to 0; expected an ascending interval',
    );
    expect(() => verdictOf({ low: 0, high: 1 }, 0)).toThrow('verdictOf: margin 0; expected above 0');
  });
});

describe('the verdict on a difference without a better direction', () => {
  it.each([
    [true, 0.3, undefined, 'different'],
    [true, 0.3, 0.3, 'different'],
    [true, 0.2, 0.3, 'different-within-margin'],
    [false, 0.3, undefined, 'no-difference-shown'],
    [false, 0.2, 0.3, 'equivalent'],
    [false, 0.3, 0.3, 'inconclusive'],
  ] as const)('zero left out: %s, farthest %d, margin %s', (excludesZero, farthest, margin, verdict) => {
    expect(undirectedVerdict(excludesZero, farthest, margin)).toBe(verdict);
  });
});
