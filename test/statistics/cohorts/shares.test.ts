import { describe, expect, it } from 'vitest';
import { meanDifference } from '../../../src/statistics/cohorts/mean-difference.js';
import { fisherMidP, mcNemarMidP } from '../../../src/statistics/cohorts/mid-p.js';
import { newcombePaired, squareAndAdd } from '../../../src/statistics/cohorts/newcombe.js';
import { riskDifference, riskRatio } from '../../../src/statistics/cohorts/risk.js';
import { designEffect } from '../../../src/statistics/icc.js';
import { shareInterval, wilson } from '../../../src/statistics/share.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';
import { events, fellowEyes, hits, independent, type Pair, pairOf } from './made-up-cohorts.js';

const withLimits = (x: number, n: number) => {
  const [low, high] = wilson(x, n, 0.95);
  return { share: x / n, low, high };
};
const unpaired = (x1: number, n1: number, x2: number, n2: number) =>
  squareAndAdd(withLimits(x1, n1), withLimits(x2, n2), 0);

const ids = [
  ...['prop2-newcombe-56_70-48_80', 'prop2-newcombe-9_10-3_10', 'prop2-newcombe-6_7-2_7', 'prop2-newcombe-5_56-0_29'],
  ...['prop2-newcombe-0_10-0_20', 'prop2-newcombe-0_10-0_10', 'prop2-newcombe-10_10-0_20', 'prop2-newcombe-10_10-0_10'],
  'prop2-fagerland-perondi',
];

describe('squareAndAdd', () => {
  it.skipIf(!referencePresent).each(ids)('is Newcombe’s method 10 on Wilson limits of prop.test: %s', (id) => {
    const { input, expected, tolerance } = example(id);
    const [low, high] = unpaired(input.x1, input.n1, input.x2, input.n2);
    expect(agrees(low, expected.newcombe[0], tolerance)).toBe(true);
    expect(agrees(high, expected.newcombe[1], tolerance)).toBe(true);
  });

  it.skipIf(!referencePresent)('with an empty cell: fisher-ritland', () => {
    const { input, expected, tolerance } = example('fisher-ritland');
    const [[x1, y1], [x2, y2]] = input.table;
    const [low, high] = unpaired(x1, x1 + y1, x2, x2 + y2);
    expect(agrees(low, expected.newcombe[0], tolerance)).toBe(true);
    expect(agrees(high, expected.newcombe[1], tolerance)).toBe(true);
  });

  // Standards page, checks 33 and 34: Newcombe RG. Stat Med 1998;17:873–890, Table II, method 10, as printed there.
  it.each([
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [6, 7, 2, 7, 0.0582, 0.8062],
    [5, 56, 0, 29, -0.0381, 0.1926],
    [0, 10, 0, 20, -0.1611, 0.2775],
    [0, 10, 0, 10, -0.2775, 0.2775],
    [10, 10, 0, 20, 0.6791, 1],
  ])('has the printed limits of %d/%d − %d/%d', (x1, n1, x2, n2, low, high) => {
    expect(unpaired(x1, n1, x2, n2)[0]).toBeCloseTo(low, 4);
    expect(unpaired(x1, n1, x2, n2)[1]).toBeCloseTo(high, 4);
  });

  it('narrows where the shares move together, and stays within −1 and 1', () => {
    const [low, high] = squareAndAdd(withLimits(7, 10), withLimits(6, 10), 0.5);
    const [wideLow, wideHigh] = unpaired(7, 10, 6, 10);
    expect(low).toBeGreaterThan(wideLow);
    expect(high).toBeLessThan(wideHigh);
    expect(unpaired(1, 1, 0, 1)[1]).toBe(1);
  });
});

const pairedIds = ['paired-fagerland-cavo', 'paired-fagerland-bentur', 'paired-agresti-approval'];

describe.skipIf(!referencePresent)('paired shares against R 4.2.2', () => {
  it.each(pairedIds)('%s: corrected φ and mid-p', (id) => {
    const { input, expected, tolerance } = example(id);
    const [[both, onlyA], [onlyB, neither]] = input.table;
    const [low, high] = newcombePaired({ both, onlyA, onlyB, neither }, 0.95);
    expect(agrees(low, expected.newcombe_paired_phi_corrected[0], tolerance)).toBe(true);
    expect(agrees(high, expected.newcombe_paired_phi_corrected[1], tolerance)).toBe(true);
    expect(agrees(mcNemarMidP(onlyA, onlyB), expected.p_midp, tolerance)).toBe(true);
  });

  it.each(pairedIds)('%s: the whole comparison in a fellow-eye design', (id) => {
    const { input, expected, tolerance } = example(id);
    const [[both, onlyA], [onlyB, neither]] = input.table;
    const pair = fellowEyes(
      [...events(both + onlyA, both + onlyA), ...new Array(onlyB + neither).fill(0)],
      [...events(both, both + onlyA), ...events(onlyB, onlyB + neither)],
    );
    const found = riskDifference(...hits(pair), 0.95);
    expect(found).toMatchObject({ method: 'newcombe-paired-phi-corrected', test: 'mcnemar-mid-p', df: undefined });
    expect(agrees(found.value, expected.difference, tolerance)).toBe(true);
    expect(agrees(found.low, expected.newcombe_paired_phi_corrected[0], tolerance)).toBe(true);
    expect(agrees(found.p, expected.p_midp, tolerance)).toBe(true);
  });
});

describe('newcombePaired', () => {
  it('takes φ as 0 where a margin is empty, and does not correct a negative one', () => {
    expect(newcombePaired({ both: 10, onlyA: 0, onlyB: 0, neither: 0 }, 0.95)).toEqual(unpaired(10, 10, 10, 10));
    // ad − bc = 1·1 − 4·4 = −15; margins 5, 5, 5, 5: φ = −15/25.
    const expected = squareAndAdd(withLimits(5, 10), withLimits(5, 10), -0.6);
    newcombePaired({ both: 1, onlyA: 4, onlyB: 4, neither: 1 }, 0.95).forEach((limit, side) => {
      expect(limit).toBeCloseTo(expected[side] as number, 14);
    });
  });
});

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

describe('riskDifference', () => {
  it('is Newcombe’s method 10 with Fisher’s mid-p where each patient has one eye', () => {
    const found = riskDifference(...hits(independent(events(56, 70), events(48, 80))), 0.95);
    const [low, high] = unpaired(56, 70, 48, 80);
    expect(found.low).toBeCloseTo(low, 12);
    expect(found.high).toBeCloseTo(high, 12);
    expect(found).toMatchObject({ method: 'square-and-add', test: 'fisher-mid-p', n: 150, patients: 150 });
    expect(found.p).toBe(fisherMidP(56, 70, 48, 80));
  });

  // Patients 0–5 with one eye in each cohort, 6–9 with both eyes in A, 10–14 with one eye in B.
  const mixed: Pair = pairOf(
    [
      ...([
        [0, 1],
        [1, 1],
        [2, 0],
        [3, 1],
        [4, 0],
        [5, 1],
      ] as const),
      ...([
        [6, 1],
        [6, 1],
        [7, 1],
        [7, 0],
        [8, 1],
        [8, 1],
        [9, 0],
        [9, 0],
      ] as const),
    ],
    [
      ...([
        [0, 1],
        [1, 0],
        [2, 0],
        [3, 1],
        [4, 0],
        [5, 1],
      ] as const),
      ...([
        [10, 1],
        [11, 0],
        [12, 0],
        [13, 1],
        [14, 0],
      ] as const),
    ],
  );

  it('correlates the cohorts through the patients they share, by hand, and tests with t', () => {
    const [a, b, cohorts] = hits(mixed);
    const found = riskDifference(a, b, cohorts, 0.95);
    // Shares 9/14 and 5/11. A: sums (hits − m·9/14)/14; B: (hit − 5/11)/11. Shared patients hit A 1 1 0 1 0 1, B 1 0 0 1 0 1.
    const p = 9 / 14;
    const q = 5 / 11;
    const sumsA = [1, 1, 0, 1, 0, 1].map((hit) => hit - p).concat([2, 1, 2, 0].map((sum) => sum - 2 * p));
    const sumsB = [1, 0, 0, 1, 0, 1, 1, 0, 0, 1, 0].map((hit) => hit - q);
    const dot = (x: number[], y: number[]): number => x.reduce((sum, v, i) => sum + v * (y[i] ?? 0), 0);
    const r = dot(sumsA.slice(0, 6), sumsB.slice(0, 6)) / Math.sqrt(dot(sumsA, sumsA) * dot(sumsB, sumsB));
    // 4 bilateral patients in A and no audit: fellow eyes are identical, deff = Σm²/n = 22/14.
    const deff = 22 / 14;
    const [lowA, highA] = wilson(9 / deff, 14 / deff, 0.95);
    const [low, high] = squareAndAdd({ share: p, low: lowA, high: highA }, withLimits(5, 11), r);
    expect(r).toBeGreaterThan(0.2);
    expect(found.low).toBeCloseTo(low, 12);
    expect(found.high).toBeCloseTo(high, 12);
    const t = meanDifference(a, b, cohorts, 0.95);
    expect(found).toMatchObject({ p: t.p, df: t.df, test: 'difference-patient-t' });
    expect(found.notes).toEqual(['design:mixed', 'few-patients'].slice(0, 1));
  });

  it('borrows the correlation of the audit in small cohorts', () => {
    const [a, b, cohorts] = hits(mixed);
    const borrowed = riskDifference(a, b, cohorts, 0.95, { auditIcc: 0 });
    const alone = riskDifference(a, b, cohorts, 0.95);
    expect(designEffect(cohorts.a, 0)).toBe(1);
    expect((borrowed.high as number) - (borrowed.low as number)).toBeLessThan(
      (alone.high as number) - (alone.low as number),
    );
  });

  it('still has limits where a share is 0, with the patients as n', () => {
    const [a, , cohorts] = hits(mixed);
    const found = riskDifference(a, new Uint8Array(11), cohorts, 0.95);
    const none = shareInterval(new Uint8Array(11), cohorts.b, 0.95, { method: 'wilson' });
    expect(none.high).toBeCloseTo(wilson(0, 11, 0.95)[1], 14);
    expect(found.value).toBeCloseTo(9 / 14, 14);
    expect(found.low as number).toBeLessThan(9 / 14);
    const both = riskDifference(new Uint8Array(14), new Uint8Array(11), cohorts, 0.95);
    expect(both).toMatchObject({ value: 0, p: undefined });
    expect(both.high).toBeCloseTo(wilson(0, 10, 0.95)[1], 14);
  });

  it('gives counts only below 5 patients', () => {
    const found = riskDifference(...hits(independent(events(3, 4), events(5, 9))), 0.95);
    expect(found).toMatchObject({ value: undefined, low: undefined, p: undefined, test: undefined, n: 13 });
  });
});

describe('riskRatio', () => {
  it('has the ratio, and by hand the t interval of its logarithm', () => {
    const { a, b, cohorts } = independent(events(7, 34), events(1, 34));
    const found = riskRatio(Uint8Array.from(a), Uint8Array.from(b), cohorts, 0.95);
    expect(found.value).toBeCloseTo(7, 12);
    // Σ((hit − p)/(np))²·n/(n − 1) = (1 − p)/(np)·n/(n − 1): with n in place of n − 1 this is Katz's logarithm.
    const part = (x: number): number => ((1 - x / 34) / x) * (34 / 33);
    expect(found.standardError).toBeCloseTo(Math.sqrt(part(7) + part(1)), 12);
  });

  it.skipIf(!referencePresent)('agrees with the interval of Katz but for n − 1 and t', () => {
    const { expected } = example('prop2-fagerland-perondi');
    const { a, b, cohorts } = independent(events(7, 34), events(1, 34));
    const found = riskRatio(Uint8Array.from(a), Uint8Array.from(b), cohorts, 0.95);
    expect(found.value).toBeCloseTo(expected.risk_ratio, 10);
    const katz = Math.log(expected.katz_log[1] / 7) / 1.959963984540054;
    expect((found.standardError as number) / Math.sqrt(34 / 33)).toBeCloseTo(katz, 9);
  });

  it('needs both shares above zero, and 5 patients in each cohort', () => {
    const none = independent(events(0, 9), events(3, 9));
    expect(riskRatio(...hits(none), 0.95)).toMatchObject({
      value: undefined,
      notes: ['design:independent', 'few-patients', 'not-estimable:zero-share'],
    });
    expect(riskRatio(...hits(independent(events(1, 4), events(1, 4))), 0.95).value).toBeUndefined();
  });
});
