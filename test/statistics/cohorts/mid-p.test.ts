import { describe, expect, it } from 'vitest';
import { fisherMidP, mcNemarMidP } from '../../../src/statistics/cohorts/mid-p.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';

describe('mid-p', () => {
  /** n choose k, exactly. */
  const choose = (n: number, k: number): bigint => {
    let value = 1n;
    for (let i = 1; i <= k; i++) value = (value * BigInt(n - k + i)) / BigInt(i);
    return value;
  };

  it.skipIf(!referencePresent).each(['fisher-tea', 'fisher-convictions', 'fisher-ritland', 'prop2-fagerland-perondi'])(
    'of Fisher is the exact p of fisher.test less half of all tables as probable as the one seen: %s',
    (id) => {
      const { input, expected, tolerance } = example(id);
      const [[xA, yA], [xB, yB]] = input.table;
      const ways = (x: number): bigint => choose(xA + yA, x) * choose(xB + yB, xA + xB - x);
      let equal = 0n;
      let all = 0n;
      for (let x = Math.max(0, xA - yB); x <= Math.min(xA + yA, xA + xB); x++) {
        all += ways(x);
        if (ways(x) === ways(xA)) equal += ways(x);
      }
      const exact = expected.fisher_p ?? expected.p;
      const half = Number((equal * 10n ** 18n) / all) / 1e18 / 2;
      expect(agrees(fisherMidP(xA, xA + yA, xB, xB + yB), exact - half, 100 * tolerance)).toBe(true);
    },
  );

  // Standards page, check 37: anterior capsule tear 15/804 against 1/822 has the exact P .000226 (Abell 2014).
  it('of 15/804 against 1/822 lies below the exact .000226', () => {
    const midP = fisherMidP(15, 804, 1, 822);
    expect(midP).toBeLessThan(0.000226);
    expect(midP).toBeGreaterThan(0.0001);
  });

  it('of equal shares is 1 less half of what was seen, and averages ½', () => {
    // 2 of 4 and 2 of 4: 36 of 70 tables.
    expect(fisherMidP(2, 4, 2, 4)).toBeCloseTo(1 - 18 / 70, 14);
    expect(mcNemarMidP(3, 3)).toBeCloseTo(1 - 20 / 64 / 2, 14);
    expect(mcNemarMidP(0, 0)).toBe(1);
    expect(fisherMidP(0, 4, 0, 9)).toBe(0.5);
  });

  it('refuses more events than eyes', () => {
    expect(() => fisherMidP(5, 4, 1, 4)).toThrow('fisherMidP: 5 of 4 and 1 of 4; expected 0 ≤ x ≤ n in both');
  });
});
