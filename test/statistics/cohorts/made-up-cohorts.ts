import fc from 'fast-check';
import { type Cohorts, recogniseDesign } from '../../../src/statistics/cohorts/design.js';
import { example } from '../reference-examples.js';

/** Values of two cohorts and the design that their patients form. */
export interface Pair {
  a: Float64Array;
  b: Float64Array;
  cohorts: Cohorts;
}

/** Eyes as [patient, value] of A and of B. */
export type Eyes = readonly (readonly [patient: number, value: number])[];

export function pairOf(a: Eyes, b: Eyes): Pair {
  const values = (eyes: Eyes): Float64Array => Float64Array.from(eyes, ([, value]) => value);
  const patients = (eyes: Eyes): Int32Array => Int32Array.from(eyes, ([patient]) => patient);
  return { a: values(a), b: values(b), cohorts: recogniseDesign(patients(a), patients(b)) };
}

/** One eye a patient, no patient in both. */
export function independent(a: readonly number[], b: readonly number[]): Pair {
  return pairOf(
    a.map((value, i) => [i, value]),
    b.map((value, i) => [1000 + i, value]),
  );
}

/** Each patient with one eye in each cohort. */
export function fellowEyes(a: readonly number[], b: readonly number[]): Pair {
  return pairOf(
    a.map((value, i) => [i, value]),
    b.map((value, i) => [i, value]),
  );
}

/** The eyes of `cluster-two-groups` (shared/reference/stat-examples.json); cohort A is the group of that name. */
export function twoGroups(design: 'group_independent' | 'group_mixed'): Pair {
  const { input } = example('cluster-two-groups');
  const eyes = (group: string): Eyes =>
    input.y
      .map((value: number, i: number) => [input.patient[i], value])
      .filter((_: unknown, i: number) => input[design][i] === group);
  return pairOf(eyes('A'), eyes('B'));
}

/** 0/1 columns with x events of n. */
export function events(x: number, n: number): number[] {
  return Array.from({ length: n }, (_, i) => (i < x ? 1 : 0));
}

/** A comparison of 0/1 columns. */
export function hits({ a, b, cohorts }: Pair): [Uint8Array, Uint8Array, Cohorts] {
  return [Uint8Array.from(a), Uint8Array.from(b), cohorts];
}

/** The same eyes with A and B exchanged. */
export const swapped = ({ a, b, cohorts: { a: A, b: B, ...rest } }: Pair): Pair => ({
  a: b,
  b: a,
  cohorts: recogniseDesign(
    Int32Array.from(B.of, (g) => rest.jointOfB[g] as number),
    Int32Array.from(A.of, (g) => rest.jointOfA[g] as number),
  ),
});

/** Mean and variance by their definitions, for textbook forms written out in tests. */
export const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, v) => sum + v, 0) / values.length;
export const variance = (values: ArrayLike<number>): number => {
  const centre = mean(values);
  return Array.from(values).reduce((sum, v) => sum + (v - centre) ** 2, 0) / (values.length - 1);
};

/** One eye of each of 6 patients or more, in eighths: their shifts and mirrors are exact. */
export const values = fc.array(
  fc.integer({ min: -24, max: 24 }).map((v) => v / 8),
  { minLength: 6, maxLength: 20 },
);

/** Eyes as [patient of ten, eighths]. */
export const mixedEyes = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: -24, max: 24 })), {
  minLength: 14,
  maxLength: 30,
});
export const eyesOf = (rows: readonly (readonly [number, number])[]) => rows.map(([g, v]) => [g, v / 8] as const);
