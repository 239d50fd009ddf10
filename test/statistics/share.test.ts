import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialLower } from '../../src/statistics/distributions.js';
import { clopperPearson, scoreLimits, shareInterval, wilson, zeroEventLimit } from '../../src/statistics/share.js';
import { referencePresent } from '../shared-reference.js';
import { hitsOf, single } from './made-up-eyes.js';
import { agrees, example } from './reference-examples.js';

const ids = [
  ...['prop1-newcombe-81-263', 'prop1-newcombe-15-148', 'prop1-newcombe-0-20', 'prop1-newcombe-1-29'],
  ...['prop1-fagerland-13-16', 'prop1-edge-0-1', 'prop1-edge-1-1', 'prop1-edge-0-9', 'prop1-edge-9-9'],
  ...['prop1-edge-10-10', 'prop1-edge-50-100', 'prop1-edge-199-200', 'prop1-edge-487-500', 'prop1-edge-0-12'],
];

describe.skipIf(!referencePresent)('one share against R 4.2.2 (prop.test, binom.test)', () => {
  it.each(ids)('%s', (id) => {
    const { input, expected, tolerance } = example(id);
    const [low, high] = wilson(input.x, input.n, input.conf);
    expect(agrees(low, expected.wilson[0], tolerance) && agrees(high, expected.wilson[1], tolerance)).toBe(true);
    const [least, most] = clopperPearson(input.x, input.n, input.conf);
    expect(agrees(least, expected.clopper_pearson[0], tolerance)).toBe(true);
    expect(agrees(most, expected.clopper_pearson[1], tolerance)).toBe(true);
  });
});

// Standards page, checks 31 and 32: Newcombe RG. Stat Med 1998;17:857–872, Table I, as printed there.
describe('Newcombe 1998, Table I', () => {
  it.each([
    [81, 263, [0.2553, 0.3662], [0.2527, 0.3676]],
    [15, 148, [0.0624, 0.1605], [0.0578, 0.1617]],
    [0, 20, [0, 0.1611], [0, 0.1684]],
    [1, 29, [0.0061, 0.1718], [0.0009, 0.1776]],
  ])('%d of %d', (x, n, score, exact) => {
    wilson(x, n, 0.95).forEach((limit, side) => {
      expect(limit).toBeCloseTo(score[side] as number, 4);
    });
    clopperPearson(x, n, 0.95).forEach((limit, side) => {
      expect(limit).toBeCloseTo(exact[side] as number, 4);
    });
  });
});

// Optics page section 5, ids 5.wil.* and 5.cp.* of shared/reference/optics-checks.csv: R and Python.
describe('the intervals of the optics page', () => {
  it.each([
    [45, 60, 0.6276792992, 0.8422347747, 0.6214036445, 0.8528139262],
    [7, 20, 0.1811918241, 0.5671457233, 0.1539092048, 0.5921885345],
    [0, 20, 0, 0.1611251581, 0, 0.168433471],
    [20, 20, 0.8388748419, 1, 0.831566529, 1],
    [1, 1, 0.2065493144, 1, 0.025, 1],
    [850, 1000, 0.8265313416, 0.8707899275, 0.8263418714, 0.8715751889],
  ])('%d of %d', (x, n, low, high, least, most) => {
    expect(wilson(x, n, 0.95)[0]).toBeCloseTo(low, 9);
    expect(wilson(x, n, 0.95)[1]).toBeCloseTo(high, 9);
    expect(clopperPearson(x, n, 0.95)[0]).toBeCloseTo(least, 9);
    expect(clopperPearson(x, n, 0.95)[1]).toBeCloseTo(most, 9);
  });
});

// Standards page, checks 35 and 36: no event in n; the upper limit is 1 − (α/2)^(1/n).
it.each([
  [100, 0.03622],
  [20, 0.16843],
])('no event in %d eyes leaves up to %d', (n, high) => {
  expect(clopperPearson(0, n, 0.95)[1]).toBeCloseTo(high, 5);
  expect(clopperPearson(0, n, 0.95)[1]).toBeCloseTo(1 - 0.025 ** (1 / n), 12);
  expect(clopperPearson(n, n, 0.95)[0]).toBeCloseTo(0.025 ** (1 / n), 12);
});

// Standards page, check 64: order statistics 2 and 9 of 10 cover the median with 97.85 %.
it('the binomial behind the median interval of 10 values covers 97.85 %', () => {
  expect(1 - 2 * binomialLower(1, 10, 0.5)).toBeCloseTo(0.9785, 4);
});

describe('shareInterval', () => {
  it('is the plain interval to 1e-12 where each patient has one eye', () => {
    for (const [method, plain] of [
      ['wilson', wilson],
      ['exact', clopperPearson],
    ] as const) {
      const found = shareInterval(hitsOf(45, 60), single(60), 0.95, { method });
      expect(found).toMatchObject({ value: 0.75, count: 45, n: 60, patients: 60, designEffect: 1, icc: undefined });
      expect(found.low).toBeCloseTo(plain(45, 60, 0.95)[0], 12);
      expect(found.high).toBeCloseTo(plain(45, 60, 0.95)[1], 12);
      expect(found.method).toBe(`${method}-effective-n`);
    }
  });

  it.skipIf(!referencePresent)('takes the design effect of Σm²/n, not of m₀, with both eyes of some patients', () => {
    const { input, expected, tolerance } = example('cluster-mean-icc');
    const hits = Uint8Array.from(input.y, (y: number) => (Math.abs(y) <= input.share_limit ? 1 : 0));
    const found = shareInterval(hits, Int32Array.from(input.patient), 0.95, { method: 'wilson' });
    expect(found).toMatchObject({ count: expected.share.count, n: 19, patients: 12, notes: [] });
    expect(agrees(found.icc, expected.share.icc, tolerance)).toBe(true);
    // 7 patients with two eyes, 5 with one: Σm² = 33; the example's own deff takes m₀ instead of 33/19.
    const deff = 1 + (33 / 19 - 1) * expected.share.icc;
    expect(found.designEffect).toBeCloseTo(deff, 12);
    expect(found.low).toBeCloseTo(wilson(14 / deff, 19 / deff, 0.95)[0], 12);
  });

  const pairs = Int32Array.from({ length: 20 }, (_, i) => i >> 1);

  it('counts patients where fellow eyes are always equal', () => {
    const hits = Uint8Array.from({ length: 20 }, (_, i) => (i < 14 ? 1 : 0));
    const found = shareInterval(hits, pairs, 0.95, { method: 'wilson' });
    expect(found).toMatchObject({ icc: 1, designEffect: 2 });
    expect(found.low).toBeCloseTo(wilson(7, 10, 0.95)[0], 12);
  });

  it('counts eyes, and no more, where fellow eyes are always opposite', () => {
    const hits = Uint8Array.from({ length: 20 }, (_, i) => i % 2);
    const found = shareInterval(hits, pairs, 0.95, { method: 'exact' });
    expect(found).toMatchObject({ icc: -1, designEffect: 1 });
    expect(found.high).toBeCloseTo(clopperPearson(10, 20, 0.95)[1], 12);
  });

  it('one pair among singles: the correlation of the audit, or fellow eyes taken as identical', () => {
    const hits = hitsOf(7, 11);
    const onePair = Int32Array.of(1, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
    // Σm²/n = (4 + 9)/11.
    const alone = shareInterval(hits, onePair, 0.95, { method: 'wilson' });
    expect(alone).toMatchObject({ icc: undefined, notes: ['icc:fellow-eyes-identical'] });
    expect(alone.designEffect).toBeCloseTo(13 / 11, 14);
    expect(alone.low).toBeCloseTo(wilson((7 * 11) / 13, (11 * 11) / 13, 0.95)[0], 12);
    const audited = shareInterval(hits, onePair, 0.95, { method: 'wilson', auditIcc: 0.5 });
    expect(audited).toMatchObject({ icc: 0.5, notes: ['icc:whole-audit'] });
    expect(audited.designEffect).toBeCloseTo(1 + 2 / 22, 14);
    const negative = shareInterval(hits, onePair, 0.95, { method: 'wilson', auditIcc: -0.2 });
    expect(negative.designEffect).toBe(1);
  });

  it('of exactly 0 or 1 has the patients as n, and keeps the limits of independent eyes for the footnote', () => {
    const none = shareInterval(new Uint8Array(20), pairs, 0.95, { method: 'exact' });
    expect(none).toMatchObject({
      value: 0,
      low: 0,
      count: 0,
      n: 20,
      patients: 10,
      method: 'exact-patients',
      notes: [],
    });
    expect(none.high).toBeCloseTo(1 - 0.025 ** (1 / 10), 12);
    expect(none.independent?.[1]).toBeCloseTo(1 - 0.025 ** (1 / 20), 12);
    const all = shareInterval(new Uint8Array(20).fill(1), pairs, 0.95, { method: 'wilson' });
    expect(all).toMatchObject({ value: 1, high: 1, method: 'wilson-patients', designEffect: undefined });
    expect(all.low).toBeCloseTo(wilson(10, 10, 0.95)[0], 14);
  });

  it('has no limits below 5 patients, and no value without eyes', () => {
    const four = shareInterval(hitsOf(3, 4), single(4), 0.95, { method: 'exact' });
    expect(four).toMatchObject({ value: 0.75, low: undefined, notes: ['not-estimable:few-patients'] });
    const none = shareInterval(new Uint8Array(4), single(4), 0.95, { method: 'exact' });
    expect(none).toMatchObject({ value: 0, high: undefined, notes: ['not-estimable:few-patients'] });
    expect(none.independent).toBeUndefined();
    expect(shareInterval(new Uint8Array(), single(0), 0.95, { method: 'wilson' })).toMatchObject({
      value: undefined,
      n: 0,
      notes: ['not-estimable:no-eyes'],
    });
  });

  it('refuses what is neither 0 nor 1', () => {
    expect(() => shareInterval(Uint8Array.of(0, 2), single(2), 0.95, { method: 'wilson' })).toThrow(
      'shareInterval: value 1 is 2; expected 0 or 1',
    );
  });

  it('holds the share, lies within 0 and 1, mirrors with the property, and ignores the order of eyes', () => {
    const eyes = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 1 })), {
      minLength: 10,
      maxLength: 40,
    });
    fc.assert(
      fc.property(eyes, fc.constantFrom('wilson' as const, 'exact' as const), (rows, method) => {
        const of = (list: typeof rows, hit: (v: number) => number) =>
          shareInterval(
            Uint8Array.from(list, ([, v]) => hit(v)),
            Int32Array.from(list, ([patient]) => patient),
            0.95,
            { method },
          );
        const plain = of(rows, (v) => v);
        const mirrored = of(rows.toReversed(), (v) => 1 - v);
        if (plain.low === undefined || plain.high === undefined) {
          expect(plain.patients).toBeLessThan(5);
          return;
        }
        expect(plain.low).toBeGreaterThanOrEqual(0);
        expect(plain.high).toBeLessThanOrEqual(1);
        expect(plain.low).toBeLessThanOrEqual(plain.value as number);
        expect(plain.high).toBeGreaterThanOrEqual(plain.value as number);
        expect(mirrored.low).toBeCloseTo(1 - plain.high, 9);
        expect(mirrored.high).toBeCloseTo(1 - plain.low, 9);
      }),
    );
  });
});

describe('wilson and clopperPearson', () => {
  it('refuse counts outside 0 to n, no eyes, and a confidence in percent', () => {
    expect(() => wilson(3, 2, 0.95)).toThrow('wilson: 3 of 2; expected 0 ≤ x ≤ n, n above 0');
    expect(() => clopperPearson(0, 0, 0.95)).toThrow('clopperPearson: 0 of 0; expected 0 ≤ x ≤ n, n above 0');
    expect(() => wilson(1, 2, 95)).toThrow('wilson: confidence is 95');
  });

  it('scoreLimits takes any multiplier: with z = 1 and one half the limits are ½ ∓ 1/(2√(n + 1))', () => {
    expect(scoreLimits(4, 8, 1)[0]).toBeCloseTo(0.5 - 1 / 6, 14);
  });
});

// Standards page, checks 35 and 36: none in 100, 20 and 300; one-sided at 95 %, close to 3/n.
describe('the rule for zero events', () => {
  it.each([
    [100, 0.02951],
    [20, 0.13911],
    [300, 0.00994],
  ])('none in %d', (n, limit) => {
    expect(zeroEventLimit(n, 0.95)).toBeCloseTo(limit, 5);
    expect(Math.abs(zeroEventLimit(n, 0.95) - 3 / n)).toBeLessThan(0.011);
  });

  it('refuses no eyes, and a confidence that is none', () => {
    expect(() => zeroEventLimit(0, 0.95)).toThrow(new RangeError('zeroEventLimit: n is 0; expected above 0'));
    expect(() => zeroEventLimit(10, 1)).toThrow(RangeError);
  });
});
