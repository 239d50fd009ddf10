import { describe, expect, it } from 'vitest';
import { auditCorrelation, designEffect, intraclassCorrelation, patientMeanSquares } from '../../src/statistics/icc.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { referencePresent, referenceText } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

interface AnovaSet {
  id: string;
  certified: { F: number };
  data?: Record<string, number[]>;
  data_rule?: { per_group_first_then_repeat_pair: [number, number, number][]; pairs: number };
  LRE_F: { plain_two_pass: number };
}

function groupsOf({ data, data_rule: rule }: AnovaSet): number[][] {
  if (data) return Object.values(data);
  if (!rule) throw new RangeError('groupsOf: no data');
  return rule.per_group_first_then_repeat_pair.map(([first, ...pair]) => [
    first,
    ...Array.from({ length: rule.pairs }, () => pair).flat(),
  ]);
}

function columns(groups: readonly number[][]): [Float64Array, Int32Array] {
  return [Float64Array.from(groups.flat()), Int32Array.from(groups.flatMap((group, g) => group.map(() => g)))];
}

function fOf(groups: readonly number[][]): number {
  const squares = patientMeanSquares(...columns(groups));
  return (squares?.between as number) / (squares?.within as number);
}

const anova: AnovaSet[] = referencePresent ? JSON.parse(referenceText('nist-strd.json')).anova : [];

describe.skipIf(!referencePresent)('mean squares between and within patients', () => {
  it('are checked on all eleven NIST sets', () => expect(anova.length).toBe(11));

  // The recorded digits are what plain two-pass arithmetic reaches; SmLs07–09 lose theirs in the doubles themselves.
  it.each(anova.map((set) => [set.id, set] as const))('give the certified F of NIST StRD %s', (_, set) => {
    const error = Math.abs(fOf(groupsOf(set)) - set.certified.F) / set.certified.F;
    expect(-Math.log10(error)).toBeGreaterThanOrEqual(set.LRE_F.plain_two_pass - 1);
  });

  it('give the F of R 4.2.2 lm: NIST GEAR, insect sprays', () => {
    const gear = example('variance-nist-gear');
    expect(agrees(fOf(gear.input.groups), gear.expected.anova_F, gear.tolerance)).toBe(true);
    const sprays = example('anova-insectsprays');
    expect(agrees(fOf(Object.values(sprays.input.groups)), sprays.expected.anova_F, sprays.tolerance)).toBe(true);
  });

  it('give mean squares and m₀ of unequal patients', () => {
    const { input, expected, tolerance } = example('cluster-mean-icc');
    const squares = patientMeanSquares(Float64Array.from(input.y), Int32Array.from(input.patient));
    expect(agrees(squares?.between, expected.icc_anova.msb, tolerance)).toBe(true);
    expect(agrees(squares?.within, expected.icc_anova.msw, tolerance)).toBe(true);
    expect(agrees(squares?.size, expected.icc_anova.m0, tolerance)).toBe(true);
  });
});

describe('intraclassCorrelation', () => {
  it.skipIf(!referencePresent)('is form (1, 1) of Shrout and Fleiss 1979, psych 2.2.9', () => {
    const { input, expected, tolerance } = example('icc-shrout-fleiss');
    expect(agrees(intraclassCorrelation(...columns(input.targets_by_judges)), expected.icc[0], tolerance)).toBe(true);
  });

  it.skipIf(!referencePresent)('is the ANOVA estimate with unequal patients, of values and of 0/1', () => {
    const { input, expected, tolerance } = example('cluster-mean-icc');
    const patients = Int32Array.from(input.patient);
    const hits = Uint8Array.from(input.y, (y: number) => (Math.abs(y) <= input.share_limit ? 1 : 0));
    expect(agrees(intraclassCorrelation(Float64Array.from(input.y), patients), expected.icc_anova.icc, tolerance)).toBe(
      true,
    );
    expect(agrees(intraclassCorrelation(hits, patients), expected.share.icc, tolerance)).toBe(true);
  });

  it('is 1 where fellow eyes are equal and −1 where they cancel', () => {
    const pairs = Int32Array.of(1, 1, 2, 2, 3, 3);
    expect(intraclassCorrelation(Float64Array.of(1, 1, 4, 4, 9, 9), pairs)).toBe(1);
    expect(intraclassCorrelation(Float64Array.of(1, -1, 4, -4, 9, -9), pairs)).toBe(-1);
  });

  it('of one pair among singles, by hand', () => {
    // Values 1 3 | 5 | 3: mean 3; MSB = (2·1 + 4 + 0)/2 = 3, MSW = 2/1 = 2, m₀ = (4 − 6/4)/2 = 1.25.
    expect(intraclassCorrelation(Float64Array.of(1, 3, 5, 3), Int32Array.of(1, 1, 2, 3))).toBeCloseTo(1 / 3.5, 14);
  });

  it('does not exist without a second eye, or where all values are equal', () => {
    expect(intraclassCorrelation(Float64Array.of(1, 2, 3), Int32Array.of(1, 2, 3))).toBeUndefined();
    expect(intraclassCorrelation(Float64Array.of(2, 2, 2), Int32Array.of(1, 1, 2))).toBeUndefined();
    expect(intraclassCorrelation(Float64Array.of(1, 2), Int32Array.of(1, 1))).toBeUndefined();
  });
});

describe('designEffect', () => {
  // Standards page, check 62: all bilateral, correlation 0.5: 100 eyes are worth 66.67.
  it('makes 66.67 eyes of 100 bilateral ones with correlation 0.5', () => {
    const fifty = indexPatients(Int32Array.from({ length: 100 }, (_, i) => i >> 1));
    expect(100 / designEffect(fifty, 0.5)).toBeCloseTo(66.6667, 4);
  });

  it('is 1 without correlation, never below, and Σm²/n where fellow eyes are identical', () => {
    const patients = indexPatients(Int32Array.of(1, 1, 2, 3));
    expect(designEffect(patients, -0.4)).toBe(1);
    expect(designEffect(patients, 0)).toBe(1);
    expect(designEffect(patients, 1)).toBe(1.5);
  });
});

it('auditCorrelation exists from 5 bilateral patients on', () => {
  const values = Float64Array.of(1, 2, 3, 4, 5, 7, 2, 3, 9, 8);
  const five = Int32Array.of(1, 1, 2, 2, 3, 3, 4, 4, 5, 5);
  expect(auditCorrelation(values, five)).toBe(intraclassCorrelation(values, five));
  expect(
    auditCorrelation(
      values,
      five.map((code, i) => (i === 9 ? 6 : code)),
    ),
  ).toBeUndefined();
});
