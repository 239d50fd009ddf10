import { describe, expect, it } from 'vitest';
import { meanDifference } from '../../../src/statistics/cohorts/mean-difference.js';
import { fisherMidP } from '../../../src/statistics/cohorts/mid-p.js';
import { squareAndAdd } from '../../../src/statistics/cohorts/newcombe.js';
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

const pairedIds = ['paired-fagerland-cavo', 'paired-fagerland-bentur', 'paired-agresti-approval'];

describe.skipIf(!referencePresent)('paired shares against R 4.2.2', () => {
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
    expect(found.notes).toEqual(['design:mixed']);
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
