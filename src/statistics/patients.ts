import { expectParallel } from './expectations.js';

/** Which patient each eye belongs to, renumbered 0, 1, 2 … in the order in which patients are first met. */
export interface PatientIndex {
  /** Patient number of each eye. */
  readonly of: Int32Array;
  /** Eyes of each patient. */
  readonly sizes: Int32Array;
  readonly eyes: number;
  /** G, the number of patients. */
  readonly count: number;
  /** Σm²/n, the mean number of eyes of an eye's patient; 0 without eyes. */
  readonly meanSize: number;
  /** Patients with two eyes or more. */
  readonly bilateral: number;
}

/** Patient codes as the eye table holds them, or an index made of them once for many statistics of one group. */
export type Patients = Int32Array | PatientIndex;

/**
 * The patient index of a column of eyes. Eyes of one patient need not be adjacent.
 *
 * @param codes any whole numbers, equal for the eyes of one patient
 * @example indexPatients(Int32Array.of(7, 7, 3)).count // 2
 */
export function indexPatients(codes: Int32Array): PatientIndex {
  const ofPatient = new Int32Array(codes.length);
  const count = renumber(codes, ofPatient);
  const sizes = new Int32Array(count);
  for (let i = 0; i < ofPatient.length; i++) {
    const g = ofPatient[i] as number;
    sizes[g] = (sizes[g] as number) + 1;
  }
  let squares = 0;
  let bilateral = 0;
  for (let g = 0; g < count; g++) {
    const size = sizes[g] as number;
    squares += size * size;
    if (size > 1) bilateral += 1;
  }
  const eyes = codes.length;
  return { of: ofPatient, sizes, eyes, count, meanSize: eyes > 0 ? squares / eyes : 0, bilateral };
}

/** Fills `of` and gives the number of patients. A table by code where codes are dense, a map where they are not. */
function renumber(codes: Int32Array, of: Int32Array): number {
  let least = 2 ** 31;
  let most = -(2 ** 31);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i] as number;
    if (code < least) least = code;
    if (code > most) most = code;
  }
  if (most - least < 8 * codes.length + 1024) return renumberByTable(codes, of, least, most);
  const numbers = new Map<number, number>();
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i] as number;
    let number = numbers.get(code);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(code, number);
    }
    of[i] = number;
  }
  return numbers.size;
}

function renumberByTable(codes: Int32Array, of: Int32Array, least: number, most: number): number {
  const numbers = new Int32Array(Math.max(0, most - least + 1));
  let count = 0;
  for (let i = 0; i < codes.length; i++) {
    const place = (codes[i] as number) - least;
    // One more than the patient's number, so that a fresh table of zeros means "not met yet".
    if (numbers[place] === 0) numbers[place] = ++count;
    of[i] = (numbers[place] as number) - 1;
  }
  return count;
}

/**
 * The index of given patients, checked against the column of values it belongs to.
 *
 * @throws {RangeError} when the lengths differ
 */
export function patientsOf(caller: string, values: ArrayLike<number>, patients: Patients): PatientIndex {
  const index = patients instanceof Int32Array ? indexPatients(patients) : patients;
  expectParallel(caller, values, index.of);
  return index;
}

/**
 * Σ (value − centre) over the eyes of each patient, in the given order of eyes.
 *
 * @param centre subtracted from every value first: small sums lose no digits
 */
export function patientSums(values: ArrayLike<number>, patients: PatientIndex, centre: number): Float64Array {
  const sums = new Float64Array(patients.count);
  for (let i = 0; i < values.length; i++) {
    const g = patients.of[i] as number;
    sums[g] = (sums[g] as number) + ((values[i] as number) - centre);
  }
  return sums;
}

/**
 * Variance of an estimate from the patients' sums of its influences: V = G/(G − 1) · Σ u².
 *
 * @param sums u of each patient; their total is zero
 * @returns undefined below two patients
 * @source Liang KY, Zeger SL. Biometrika 1986;73:13–22, with the factor G/(G − 1)
 */
export function patientVariance(sums: Float64Array): number | undefined {
  const G = sums.length;
  if (G < 2) return undefined;
  let squares = 0;
  for (let g = 0; g < G; g++) squares += (sums[g] as number) ** 2;
  return (G / (G - 1)) * squares;
}
