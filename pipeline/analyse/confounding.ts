import type { EyeGroup } from '../../src/analysis/sample.js';
import { categoriesOf, hasColumn, integersOf, numbersOf } from '../../src/columns/table.js';
import { type Compares, crossRows, mixRow, overlapRows } from '../../src/comparison/confounding.js';
import { learningRow } from '../../src/comparison/learning.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { byOperation, eyeOrderOf } from '../../src/eligibility/one-eye.js';
import { groupByCategory, groupByNumber } from '../../src/groups/grouping.js';
import { noDay } from '../../src/records/canonical.js';
import type { Derived, Grouping } from '../../src/records/derived.js';
import type { ResultRow } from '../../src/records/result.js';
import { recogniseDesign } from '../../src/statistics/cohorts/design.js';
import type { Groups } from './groups.js';

/** What goes with a technique and may be the reason for a difference. */
const suspects = ['surgeon', 'machine', 'lens_model'] as const;

function groupingsOf({ tables: { eyes }, cohorts }: Derived): readonly Grouping[] {
  const named = suspects
    .filter((field) => field !== cohorts?.field && hasColumn(eyes, field))
    .map((field) => groupByCategory(field, categoriesOf(eyes, field)));
  return cohorts?.field === 'year' ? named : [...named, groupByNumber('year', numbersOf(eyes, 'year'))];
}

/** The design that the patients of two cohorts form; differences are of the compared cohort less the reference, A. */
function designRows({ group, compared, reference }: Compares, patient: Int32Array): readonly ResultRow[] {
  const codes = ({ eyes }: EyeGroup): Int32Array => eyes.map((eye) => patient[eye] as number);
  const { sizes, design, patients } = recogniseDesign(codes(reference), codes(compared));
  const eyes = compared.eyes.length + reference.eyes.length;
  return (['patients_only_a', 'patients_only_b', 'patients_both'] as const).map((statistic, i) => ({
    measure: 'design',
    group,
    statistic,
    value: sizes[i] as number,
    ci_low: undefined,
    ci_high: undefined,
    n: eyes,
    eyes,
    patients,
    unit: 'patients',
    method: 'count',
    note: `design:${design}`,
  }));
}

/** What a surgeon learns to use: a cohort by it may hold a surgeon's first eyes. */
const learned: readonly string[] = ['technique', 'machine', 'lens_model'];

/** Early eyes of every cohort, where cohorts differ in what is learned. */
function learningRows(derived: Derived, cohorts: readonly EyeGroup[]): readonly ResultRow[] {
  const { tables, cohorts: grouping } = derived;
  if (!grouping || !learned.includes(grouping.field)) return [];
  const { eyes } = tables;
  const of = eyeOrderOf(tables);
  const order = {
    compare: (a: number, b: number): number => byOperation(of, a, b),
    isKnown: (eye: number): boolean => of.surgeryDay[eye] !== noDay || !Number.isNaN(of.order[eye] as number),
    surgeon: hasColumn(eyes, 'surgeon') ? categoriesOf(eyes, 'surgeon').codes : new Uint8Array(eyes.numRows()),
  };
  const all = Int32Array.from(cohorts.flatMap((cohort) => [...cohort.eyes]));
  return cohorts.map((cohort) => learningRow(cohort, all, order, of.patient));
}

/** The design of every comparison, and what goes together with the cohorts: people, machines, lenses, time, practice. */
export function confoundingRows(derived: Derived, { cohorts, comparisons }: Groups): readonly ResultRow[] {
  if (comparisons.length === 0) return [];
  const { membership, tables } = derived;
  const { eyes } = tables;
  const patient = integersOf(eyes, 'patient');
  const time = { day: integersOf(eyes, 'surgeryDay'), year: numbersOf(eyes, 'year'), patient };
  const eligible = analysedIn(membership.eligible);
  const only = ({ key, eyes: of }: EyeGroup): EyeGroup => ({ key, eyes: of.filter((eye) => eligible[eye] === 1) });
  const restricted = comparisons.map(({ group, compared, reference }) => ({
    group,
    compared: only(compared),
    reference: only(reference),
  }));
  const fields = groupingsOf(derived);
  return [
    ...restricted.flatMap((compares) => designRows(compares, patient)),
    ...fields.flatMap((field) => crossRows(field, cohorts.map(only), patient)),
    ...restricted.flatMap((compares) => [
      ...fields.map((field) => mixRow(field, compares, patient)),
      ...overlapRows(compares, time),
    ]),
    ...learningRows(derived, cohorts.map(only)),
  ];
}
