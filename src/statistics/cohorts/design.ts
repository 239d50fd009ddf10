import { indexPatients, type PatientIndex } from '../patients.js';

/** Whether cohorts share patients: not at all, each patient with one eye in each, or anything between. */
export type Design = 'independent' | 'fellow-eye' | 'mixed';

/** Stratum of a patient: 0 only in A, 1 only in B, 2 in both. */
export type Stratum = 0 | 1 | 2;

/** Two cohorts of eyes and the patients they share. */
export interface Cohorts {
  a: PatientIndex;
  b: PatientIndex;
  design: Design;
  /** Patients of both cohorts together; those of A come first, in the order in which they are met. */
  patients: number;
  /** Joint number of each patient of A, and of B. */
  jointOfA: Int32Array;
  jointOfB: Int32Array;
  /** Stratum of each patient, by joint number. */
  strata: Uint8Array;
  /** Patients of each stratum. */
  sizes: readonly [onlyA: number, onlyB: number, both: number];
}

/**
 * Two cohorts by the patients of their eyes, and the design they form.
 *
 * @param patientsA code of each eye's patient in A
 * @param patientsB likewise in B, one coding for both
 * @source designs of this project's statistics page
 * @example recogniseDesign(Int32Array.of(1, 2), Int32Array.of(1, 2)).design // 'fellow-eye'
 */
export function recogniseDesign(patientsA: Int32Array, patientsB: Int32Array): Cohorts {
  const a = indexPatients(patientsA);
  const b = indexPatients(patientsB);
  const codes = new Int32Array(patientsA.length + patientsB.length);
  codes.set(patientsA);
  codes.set(patientsB, patientsA.length);
  const joint = indexPatients(codes);
  const jointOfA = new Int32Array(a.count);
  const jointOfB = new Int32Array(b.count);
  for (let i = 0; i < a.eyes; i++) jointOfA[a.of[i] as number] = joint.of[i] as number;
  for (let i = 0; i < b.eyes; i++) jointOfB[b.of[i] as number] = joint.of[a.eyes + i] as number;
  const strata = new Uint8Array(joint.count).fill(1);
  for (const g of jointOfA) strata[g] = 0;
  for (const g of jointOfB) if ((g as number) < a.count) strata[g] = 2;
  const sizes = [0, 0, 0] as [number, number, number];
  for (const stratum of strata) sizes[stratum as Stratum] += 1;
  const design = designOf(a, b, sizes);
  return { a, b, design, patients: joint.count, jointOfA, jointOfB, strata, sizes };
}

function designOf(a: PatientIndex, b: PatientIndex, [onlyA, onlyB, both]: Cohorts['sizes']): Design {
  if (both === 0) return 'independent';
  const pairs = onlyA + onlyB === 0 && a.bilateral + b.bilateral === 0;
  return pairs ? 'fellow-eye' : 'mixed';
}

/** Whether every patient has one eye in all, so that textbook forms for independent samples hold. */
export function oneEyeEach({ design, a, b }: Cohorts): boolean {
  return design === 'independent' && a.bilateral + b.bilateral === 0;
}
