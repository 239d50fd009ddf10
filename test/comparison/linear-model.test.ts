import { describe, expect, it } from 'vitest';
import { linearModel } from '../../src/comparison/linear-model.js';
import type { Covariate } from '../../src/comparison/model-matrix.js';
import { recogniseDesign } from '../../src/statistics/cohorts/design.js';
import { meanDifference } from '../../src/statistics/cohorts/mean-difference.js';

// 19 eyes of 12 patients, made up; patients and values those of 'cluster-two-groups' in shared/reference.
const patients = [1, 1, 2, 2, 3, 4, 4, 5, 6, 6, 7, 8, 8, 9, 10, 10, 11, 12, 12];
const y = [
  0.12, 0.25, -0.38, -0.25, 0.5, 0, 0.13, -0.62, 0.75, 0.37, -0.13, 0.25, 0.62, -0.25, -0.5, -0.12, 0.38, 1.12, 0.87,
];
const independent = [...'AAAAAAAAAABBBBBBBBB'];
const mixed = [...'ABABAAABABBBBAABABB'];
const length = [
  23.1, 23.4, 24.0, 22.8, 25.1, 21.9, 22.2, 23.7, 24.4, 24.9, 22.5, 23.3, 23.0, 26.1, 24.2, 23.9, 21.4, 22.7, 23.6,
];
const grade = [...'ppqqrqpprqpqrpqrrpq'].map((letter) => 'pqr'.indexOf(letter) + 1);

const numeric: Covariate = { name: 'length', kind: 'number', values: length };
const category: Covariate = { name: 'grade', kind: 'category', codes: grade };

/** B less A at equal covariates. */
function adjusted(groups: readonly string[], covariates: readonly Covariate[], values = y) {
  const of = (group: string): number[] => [...values.keys()].filter((eye) => groups[eye] === group);
  const [b, a] = [of('B'), of('A')];
  const codes = (eyes: readonly number[]) => Int32Array.from(eyes, (eye) => patients[eye] as number);
  const pick = (eyes: readonly number[]) => Float64Array.from(eyes, (eye) => values[eye] as number);
  const cohorts = recogniseDesign(codes(b), codes(a));
  const model = linearModel(Int32Array.from([...b, ...a]), cohorts, covariates);
  return { found: model.difference(pick(b), pick(a), 0.95), plain: meanDifference(pick(b), pick(a), cohorts, 0.95) };
}

// NumPy 2.4.6 and SciPy 1.17.1: numpy.linalg.lstsq; influences from the residual of the cohort on the covariates
// (Frisch, Waugh and Lovell) times the residual of the model; sums by patient, f and its corrections in a loop.
describe('a linear model of cohort and covariates', () => {
  it.each([
    ['independent', independent, [], 0.16188888888888886, 0.29435537505842946, 8.760282891889036, 0.5960757628760063],
    [
      'independent',
      independent,
      [numeric],
      0.15547433925003984,
      0.30593717225791744,
      8.083238714312284,
      0.6248951845777768,
    ],
    [
      'independent',
      independent,
      [numeric, category],
      0.10894947532220414,
      0.36735988851501206,
      4.528061332896918,
      0.7799064537456839,
    ],
    ['mixed', mixed, [numeric], 0.14292872187118935, 0.22053892269375788, 4.064651842715183, 0.5517212038625035],
    [
      'mixed',
      mixed,
      [numeric, category],
      0.19477304936358433,
      0.22535188659096064,
      1.0082469158579137,
      0.5453001336587971,
    ],
  ] as const)('%s design', (_, groups, covariates, value, standardError, df, p) => {
    const { found } = adjusted(groups, covariates);
    expect(found.value).toBeCloseTo(value, 12);
    expect(found.standardError).toBeCloseTo(standardError, 12);
    expect(found.df).toBeCloseTo(df, 9);
    expect(found.p).toBeCloseTo(p, 10);
    expect((found.low as number) + (found.high as number)).toBeCloseTo(2 * value, 12);
  });

  it('is the unadjusted comparison without covariates', () => {
    for (const groups of [independent, mixed]) {
      const { found, plain } = adjusted(groups, []);
      for (const key of ['value', 'low', 'high', 'p', 'df'] as const) {
        expect(found[key]).toBeCloseTo(plain[key] as number, 12);
      }
    }
  });

  it('takes two categories and a number of two values alike, whatever the number’s origin and unit', () => {
    const two = grade.map((code) => (code === 1 ? 1 : 2));
    const asCategory = adjusted(mixed, [{ name: 'g', kind: 'category', codes: two }]).found;
    const asNumber = adjusted(mixed, [{ name: 'g', kind: 'number', values: two.map((code) => 1e4 + 7 * code) }]).found;
    expect(asCategory.value).toBeCloseTo(asNumber.value as number, 10);
    expect(asCategory.standardError).toBeCloseTo(asNumber.standardError as number, 10);
  });

  it('takes away what a covariate explains in full: y = 2·length leaves no difference', () => {
    const { found } = adjusted(
      mixed,
      [numeric],
      length.map((mm) => 2 * mm),
    );
    expect(found.value).toBeCloseTo(0, 10);
  });
});

describe('a model that cannot be fitted says why', () => {
  it('a covariate that follows from others, by name', () => {
    const double: Covariate = { name: 'twice; as long', kind: 'number', values: length.map((mm) => 2 * mm) };
    const { notes, value } = adjusted(mixed, [numeric, double]).found;
    expect(value).toBeUndefined();
    expect(notes).toContain('not-estimable:collinear:twice%3B as long');
  });

  it('a covariate that is the cohort itself, or one value everywhere', () => {
    const codes = mixed.map((group) => (group === 'A' ? 1 : 2));
    expect(adjusted(mixed, [{ name: 'surgeon', kind: 'category', codes }]).found.notes).toContain(
      'not-estimable:collinear:surgeon',
    );
    const constant: Covariate = { name: 'site', kind: 'number', values: codes.map(() => 3) };
    expect(adjusted(mixed, [constant]).found.notes).toContain('not-estimable:collinear:site');
  });

  it('surgeons who each keep to one technique', () => {
    const surgeons = independent.map((group, eye) => (group === 'A' ? 1 + (eye % 2) : 3 + (eye % 2)));
    const { notes } = adjusted(independent, [{ name: 'surgeon', kind: 'category', codes: surgeons }]).found;
    expect(notes).toContain('not-estimable:collinear:surgeon');
  });

  it('more columns than its patients can bear', () => {
    // 12 patients less 2 cohorts less 6 columns leave 4.
    const seven = y.map((_, eye) => 1 + (eye % 7));
    const { notes, value } = adjusted(mixed, [{ name: 'week', kind: 'category', codes: seven }]).found;
    expect(notes).toContain('not-estimable:few-patients-for-covariates');
    expect(value).toBeUndefined();
  });
});
