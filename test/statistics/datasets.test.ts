import { describe, expect, it } from 'vitest';
import { recogniseDesign } from '../../src/statistics/cohorts/design.js';
import { meanDifference } from '../../src/statistics/cohorts/mean-difference.js';
import { mcNemarMidP } from '../../src/statistics/cohorts/mid-p.js';
import { riskDifference } from '../../src/statistics/cohorts/risk.js';
import { intraclassCorrelation } from '../../src/statistics/icc.js';
import { meanInterval } from '../../src/statistics/mean.js';
import { summary } from '../../src/statistics/summary.js';
import { referencePresent, referenceText } from '../shared-reference.js';
import { agrees } from './reference-examples.js';

// Real two-eye data, kept in shared/reference; results by R 4.2.2 in dataset-expected.json, closed forms at 1e-8.
const tolerance = 1e-8;

interface Rows {
  [column: string]: string;
}

function rowsOf(file: string): Rows[] {
  const [head = '', ...lines] = referenceText(`datasets/${file}`).trim().split(/\r?\n/);
  const columns = head.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [columns[i] as string, cell])));
}

const expectedOf = (set: string) => JSON.parse(referenceText('dataset-expected.json'))[set];
const codesOf = (patients: readonly string[]): Int32Array => Int32Array.from(patients, (patient) => Number(patient));

/** Spherical equivalents of the refraction set, cleaned as its entry says. */
function refractions(): { patient: string; eye: string; se: number }[] {
  return rowsOf('papila_refraction_raw.csv')
    .filter(({ sphere, cylinder, axis }) => {
      if (!sphere && !cylinder) return false;
      if (axis && (Number(axis) < 0 || Number(axis) > 180)) return false;
      if (Math.abs(Number(cylinder)) > 7) return false;
      return !(Number(cylinder) !== 0 && !axis);
    })
    .map(({ patient = '', eye = '', sphere, cylinder }) => ({
      patient,
      eye,
      se: Number(sphere) + Number(cylinder) / 2,
    }));
}

describe.skipIf(!referencePresent)('spherical equivalents of both eyes of 244 patients', () => {
  it('have the mean, SD and patient-based standard error of R', () => {
    const eyes = refractions();
    const expected = expectedOf('papila');
    const found = summary(Float64Array.from(eyes, ({ se }) => se));
    expect(found.n).toBe(expected.all_eyes.n);
    expect(agrees(found.mean, expected.all_eyes.mean_SE, tolerance)).toBe(true);
    expect(agrees(found.sd, expected.all_eyes.sd_SE, tolerance)).toBe(true);
    const patients = codesOf(eyes.map(({ patient }) => patient));
    const interval = meanInterval(
      Float64Array.from(eyes, ({ se }) => se),
      patients,
      0.95,
    );
    // R's entry leaves out the factor G/(G − 1). t(241) at 0.975 is 1.9698562 (SciPy 1.17.1, t.ppf).
    const G = interval.patients;
    expect(G).toBe(242);
    const se = ((interval.high as number) - (interval.value as number)) / 1.9698562184;
    expect(agrees(se * Math.sqrt((G - 1) / G), expected.two_eye_models_SE.cluster_robust_se_of_mean, 1e-7)).toBe(true);
  });

  it('differ between fellow eyes by the paired t and correlate by form (1, 1)', () => {
    const eyes = refractions();
    const right = new Map(eyes.filter(({ eye }) => eye === 'OD').map(({ patient, se }) => [patient, se]));
    const left = eyes.filter(({ eye, patient }) => eye === 'OS' && right.has(patient));
    const patients = codesOf(left.map(({ patient }) => patient));
    const a = Float64Array.from(left, ({ patient }) => right.get(patient) as number);
    const b = Float64Array.from(left, ({ se }) => se);
    const expected = expectedOf('papila').right_v_left_SE;
    const found = meanDifference(a, b, recogniseDesign(patients, patients), 0.95);
    expect(found.n).toBe(2 * expected.n_pairs);
    expect(agrees(found.value, expected.mean_difference, tolerance)).toBe(true);
    expect(agrees(found.p, expected.p, tolerance)).toBe(true);
    const all = Float64Array.from([...a, ...b]);
    const icc = intraclassCorrelation(all, Int32Array.from([...patients, ...patients]));
    expect(agrees(icc, expected.icc.ICC1, tolerance)).toBe(true);
  });
});

describe.skipIf(!referencePresent)('one eye of each of 197 diabetic patients treated', () => {
  it('is recognised as a fellow-eye design with its paired table', () => {
    const rows = rowsOf('diabetic_retinopathy_two_eye.csv');
    const group = (trt: string) => rows.filter((row) => row.trt === trt);
    const codes = (trt: string): Int32Array => codesOf(group(trt).map(({ id = '' }) => id));
    const kept = (trt: string): Uint8Array => Uint8Array.from(group(trt), ({ status }) => (status === '0' ? 1 : 0));
    const cohorts = recogniseDesign(codes('1'), codes('0'));
    expect(cohorts).toMatchObject({ design: 'fellow-eye', patients: expectedOf('retinopathy').patients });
    const [[, onlyTreated], [onlyUntreated]] = expectedOf('retinopathy').paired_table_treated_rows_untreated_columns;
    const found = riskDifference(kept('1'), kept('0'), cohorts, 0.95);
    expect(found.p).toBe(mcNemarMidP(onlyTreated, onlyUntreated));
    expect(found.value).toBeCloseTo((onlyTreated - onlyUntreated) / 197, 12);
    // Mid-p is the exact p less the probability of the split seen.
    expect(found.p as number).toBeLessThan(expectedOf('retinopathy').mcnemar_exact_p);
  });
});

it.skipIf(!referencePresent)('acuity change after 52 weeks differs by Welch’s t of R', () => {
  const rows = rowsOf('armd_va_letters.csv').filter(({ visual0, visual52 }) => visual0 && visual52);
  const change = (arm: string): Float64Array =>
    Float64Array.from(
      rows.filter(({ treat }) => treat === arm),
      ({ visual0, visual52 }) => Number(visual52) - Number(visual0),
    );
  const codes = (arm: string): Int32Array =>
    codesOf(rows.filter(({ treat }) => treat === arm).map(({ subject = '' }) => subject));
  const cohorts = recogniseDesign(codes('Active'), codes('Placebo'));
  const found = meanDifference(change('Active'), change('Placebo'), cohorts, 0.95);
  const expected = expectedOf('armd').change52_welch;
  expect(agrees((found.value as number) / (found.standardError as number), expected.t, tolerance)).toBe(true);
  expect(agrees(found.df, expected.df, tolerance)).toBe(true);
  expect(agrees(found.p, expected.p, tolerance)).toBe(true);
});
