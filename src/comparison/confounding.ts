import type { EyeGroup } from '../analysis/sample.js';
import { calendarFromDays } from '../intake/calendar.js';
import { noDay } from '../records/canonical.js';
import type { Grouping } from '../records/derived.js';
import type { ResultRow } from '../records/result.js';
import { groupPair } from '../results/index.js';
import { withPair } from './group.js';

/** Two cohorts of eyes, and what they are compared under. */
export interface Compares {
  group: string;
  compared: EyeGroup;
  reference: EyeGroup;
}

/** Below this overlap of two mixes, who operated with what is told before any difference (*judgement*). */
const uneven = 0.75;

/** Eyes of each value of a field in one cohort, by the index of its names. */
function countsIn({ names, code }: Grouping, { eyes }: EyeGroup): readonly number[] {
  const counts = new Array<number>(names.length).fill(0);
  for (const eye of eyes) {
    const index = (code[eye] as number) - 1;
    if (index >= 0) counts[index] = (counts[index] as number) + 1;
  }
  return counts;
}

function patientsOf(patient: Int32Array, ...groups: readonly Int32Array[]): number {
  const met = new Set<number>();
  for (const eyes of groups) for (const eye of eyes) met.add(patient[eye] as number);
  return met.size;
}

type Parts = Pick<ResultRow, 'measure' | 'group' | 'statistic' | 'value' | 'n' | 'eyes' | 'patients' | 'unit'>;
const plain = (parts: Parts, note = ''): ResultRow => ({
  ...parts,
  ci_low: undefined,
  ci_high: undefined,
  method: parts.unit === 'share' ? 'overlap' : 'count',
  note,
});

/**
 * Eyes of every value of a field in every cohort: surgeon, machine, lens, year.
 *
 * @param cohorts  their eligible eyes
 */
export function crossRows(field: Grouping, cohorts: readonly EyeGroup[], patient: Int32Array): readonly ResultRow[] {
  return cohorts.flatMap((cohort) =>
    countsIn(field, cohort).map((value, index) => {
      const group = withPair(cohort.key, groupPair(field.field, field.names[index] as string));
      const patients = patientsOf(
        patient,
        cohort.eyes.filter((eye) => field.code[eye] === index + 1),
      );
      const about = { measure: 'confounding', group, statistic: 'count', unit: 'eyes' };
      return plain({ ...about, value, n: value, eyes: cohort.eyes.length, patients });
    }),
  );
}

/**
 * How much of two cohorts' mixes is common: Σ min(share in one, share in the other) over the values of a field; 1 where
 * they are the same, 0 where no value is in both.
 *
 * @returns undefined where a cohort has no eyes
 * @source overlapping coefficient of two discrete distributions (definition)
 * @example mixOverlap([5, 5], [10, 0]) // 0.5
 */
export function mixOverlap(a: readonly number[], b: readonly number[]): number | undefined {
  const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);
  const [ofA, ofB] = [total(a), total(b)];
  if (ofA === 0 || ofB === 0) return undefined;
  return a.reduce((sum, count, i) => sum + Math.min(count / ofA, (b[i] as number) / ofB), 0);
}

function overlapNote(value: number | undefined): string {
  if (value === undefined) return 'not-estimable:no-eyes';
  if (value === 0) return 'no-overlap';
  return value < uneven ? 'uneven' : '';
}

/** The overlap of two cohorts in one field. */
export function mixRow(field: Grouping, { group, compared, reference }: Compares, patient: Int32Array): ResultRow {
  const value = mixOverlap(countsIn(field, compared), countsIn(field, reference));
  const eyes = compared.eyes.length + reference.eyes.length;
  const patients = patientsOf(patient, compared.eyes, reference.eyes);
  const about = { measure: 'confounding', group, statistic: `overlap:${field.field}`, unit: 'share' };
  return plain({ ...about, value, n: eyes, eyes, patients }, overlapNote(value));
}

/** Months since year 0 of each day that is known. */
function monthsOf({ eyes }: EyeGroup, day: Int32Array): ReadonlySet<number> {
  const days = new Set(eyes.map((eye) => day[eye] as number));
  days.delete(noDay);
  return new Set(
    Array.from(days, (one) => {
      const { year, month } = calendarFromDays(one);
      return 12 * year + month - 1;
    }),
  );
}

function yearsOf({ eyes }: EyeGroup, year: Float64Array): ReadonlySet<number> {
  return new Set(Array.from(eyes, (eye) => year[eye] as number).filter((value) => !Number.isNaN(value)));
}

/** Calendar months in which both cohorts were operated, of those from the first operation to the last; years without dates. */
export function overlapRows(
  { group, compared, reference }: Compares,
  time: { day: Int32Array; year: Float64Array; patient: Int32Array },
): readonly ResultRow[] {
  const dated = [compared, reference].some(({ eyes }) => eyes.some((eye) => time.day[eye] !== noDay));
  const of = (cohort: EyeGroup) => (dated ? monthsOf(cohort, time.day) : yearsOf(cohort, time.year));
  const [a, b] = [of(compared), of(reference)];
  const unit = dated ? 'months' : 'years';
  const all = [...a, ...b];
  const span = all.length === 0 ? undefined : Math.max(...all) - Math.min(...all) + 1;
  const common = span === undefined ? undefined : [...a].filter((one) => b.has(one)).length;
  const eyes = compared.eyes.length + reference.eyes.length;
  const patients = patientsOf(time.patient, compared.eyes, reference.eyes);
  const about = { measure: 'overlap', group, n: eyes, eyes, patients, unit };
  return [
    plain(
      { ...about, statistic: `overlap_${unit}`, value: common },
      overlapNote(common === undefined ? undefined : common / (span as number)),
    ),
    plain({ ...about, statistic: unit, value: span }, span === undefined ? 'not-estimable:no-eyes' : ''),
  ];
}
