// Kovalyk O, Morales-Sánchez J, Verdú-Monedero R, Sellés-Navarro I, Palazón-Cabanes A, Sancho-Gómez JL. Sci Data 2022;9
// (from memory): refractions of both eyes of 244 patients, errors and all. The file stays outside the project.
// Expected values: shared/reference/dataset-expected.json, R 4.2.2, closed forms to 1e-8.
import { describe, expect, it } from 'vitest';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import type { Finding } from '../../src/records/finding.js';
import { summary } from '../../src/statistics/summary.js';
import { referencePresent, referenceText } from '../shared-reference.js';
import { agrees } from '../statistics/reference-examples.js';
import { auditOf } from '../whole/audit.js';

/**
 * The reading that the reference describes: a blank beside a power is zero, above 7 D is no cylinder. Its vectors are
 * of the spectacle plane, so the vertex distance is none. Nobody was operated in that series: the operations are made up.
 */
const audit = `format: 1
title: Refractions of both eyes
sources:
  - file: operations.csv
    holds: surgery
    columns: { patient: Case, eye: Side, surgery_year: Year }
    covariates: { side: Side }
  - file: refractions.csv
    holds: exam
    visit: outcome
    columns: { patient: patient, eye: eye, sphere: sphere, cylinder: cylinder, axis: axis }
    constants: { vertex_mm: 0 }
    blank_means: { sphere: 0, cylinder: 0 }
follow_up:
  visits:
    - { name: outcome }
cohorts: { by: side }
quality:
  limits:
    cylinder: { possible: [0, 7], reason: the reading of the reference results }
`;

/** Eyes that are asked about though they are kept, by rule; as found in the file, none of them listed as faulty. */
const asked: Readonly<Record<string, readonly string[]>> = {
  'sphere-range': ['250 OS'],
  // Positive among negative cylinders: `flags.positive_cylinder` of the reference.
  'cylinder-notation': ['077 OD', '184 OS', '219 OS', '234 OD', '265 OS'],
  // Not in quarters: `flags.not_quarter_step` of the reference.
  'refraction-grid': ['202 OD', '251 OS'],
};

interface Part {
  n: number;
  centroid_power: number;
  centroid_plus_axis: number;
  mean_x: number;
  mean_y: number;
  sd_x: number;
  sd_y: number;
  cov_xy: number;
  mean_magnitude: number;
  sd_magnitude: number;
  median_magnitude: number;
  mean_SE: number;
  sd_SE: number;
  median_SE: number;
}

interface Expected extends Record<'all_eyes' | 'OD' | 'OS', Part> {
  rows: number;
  patients: number;
  excluded: Readonly<Record<string, string | readonly string[]>>;
  flags: { positive_cylinder: readonly string[]; not_quarter_step: readonly string[] };
}

describe.skipIf(!referencePresent)('real refractions, read as the reference reads them', async () => {
  const text = referencePresent ? referenceText('datasets/papila_refraction_raw.csv') : 'patient,eye\n';
  const expected: Expected = referencePresent ? JSON.parse(referenceText('dataset-expected.json')).papila : undefined;
  const keys = text
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(',', 2).join(','));
  const operations = ['Case,Side,Year', ...keys.map((key) => `${key},2025`)].join('\n');
  const files = { 'operations.csv': operations, 'refractions.csv': text };
  const found = referencePresent ? await auditOf(audit, files) : undefined;
  if (!found) return;

  const { eyes, tables } = found.derived;
  const patient = integersOf(eyes, 'patient');
  const side = integersOf(eyes, 'laterality');
  const nameOf = (eye: number): string => `${tables.patients[patient[eye] as number]} ${side[eye] === 0 ? 'OD' : 'OS'}`;
  const eyesOf = (which: (finding: Finding) => boolean): readonly string[] =>
    [...new Set(found.findings.filter(which).map(({ eye }) => nameOf(eye)))].sort();
  const excluded = (reason: string): readonly string[] => [expected.excluded[reason] ?? []].flat();

  it('are all read', () => {
    expect(tables.patients).toHaveLength(expected.patients);
    expect(tables.books.map(({ read }) => read)).toEqual([expected.rows, expected.rows]);
  });

  it('lose every eye that is listed as faulty, for its reason, and no other', () => {
    const by = (rule: string, effect: string) => eyesOf((one) => one.rule === rule && one.effect === effect);
    expect(by('axis-range', 'vector left out')).toEqual(excluded('axis out of range'));
    expect(by('axis-missing', 'vector left out')).toEqual(excluded('cylinder without axis'));
    expect(by('cylinder-range', 'refraction left out')).toEqual(excluded('cylinder implausible (>7 D)'));
    expect(by('surgery-without-exam', 'kept')).toEqual(excluded('no refraction'));
    expect(tables.books[1]?.setAside).toEqual({ 'no-values': excluded('no refraction').length });
    const lost = eyesOf(({ rule, effect }) => effect !== 'kept' || rule === 'surgery-without-exam');
    expect(lost).toEqual(Object.values(expected.excluded).flat().sort());
  });

  it('raise the queries of the list, and no other', () => {
    const kept = found.findings.filter(({ effect, rule }) => effect === 'kept' && rule !== 'surgery-without-exam');
    const rules = [...new Set(kept.map(({ rule }) => rule))].sort();
    const listed = rules.map((rule) => [rule, eyesOf((one) => one.rule === rule && one.effect === 'kept')]);
    expect(Object.fromEntries(listed)).toEqual(asked);
    expect(asked['cylinder-notation']).toEqual(expected.flags.positive_cylinder);
    expect(asked['refraction-grid']).toEqual(expected.flags.not_quarter_step);
  });

  it.each([
    ['all', 'all_eyes'],
    ['side=OD', 'OD'],
    ['side=OS', 'OS'],
  ] as const)('have the centroid that R gives, %s', (group, part) => {
    const of = (statistic: string) => found.results.get('refractive_cylinder_after', group, statistic).value as number;
    const reference = expected[part];
    expect(of('n')).toBe(reference.n);
    for (const [statistic, value] of [
      ['centroid_x', reference.mean_x],
      ['centroid_y', reference.mean_y],
      ['centroid_magnitude', reference.centroid_power],
      ['centroid_axis', reference.centroid_plus_axis],
      ['sd_x', reference.sd_x],
      ['sd_y', reference.sd_y],
      ['covariance_xy', reference.cov_xy],
      ['mean_magnitude', reference.mean_magnitude],
    ] as const)
      expect([statistic, agrees(of(statistic), value, 1e-8)]).toEqual([statistic, true]);
  });

  // Equivalents need no axis: over the eyes with a vector they are those of the reference.
  it.each([
    ['both', [0, 1], 'all_eyes'],
    ['right', [0], 'OD'],
    ['left', [1], 'OS'],
  ] as const)('have the equivalents and cylinders that R gives, %s eyes', (_, sides, part) => {
    const x = numbersOf(eyes, 'refractive_cylinder_after_x');
    const isAsked = (eye: number): boolean =>
      !Number.isNaN(x[eye]) && (sides as readonly number[]).includes(side[eye] as number);
    const values = (name: string) => summary(numbersOf(eyes, name).filter((_value, eye) => isAsked(eye)));
    const [se, cylinder] = [values('spherical_equivalent'), values('refractive_cylinder_after_recorded')];
    const reference = expected[part];
    expect([se.n, cylinder.n]).toEqual([reference.n, reference.n]);
    for (const [value, wanted] of [
      [se.mean, reference.mean_SE],
      [se.sd, reference.sd_SE],
      [se.median, reference.median_SE],
      [cylinder.mean, reference.mean_magnitude],
      [cylinder.sd, reference.sd_magnitude],
      [cylinder.median, reference.median_magnitude],
    ] as const)
      expect(agrees(value as number, wanted, 1e-8)).toBe(true);
  });
});
