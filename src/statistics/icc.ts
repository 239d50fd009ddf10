import { type EstimateNote, fewestPatients } from './estimate.js';
import { expectFinite } from './expectations.js';
import { type Column, meanOf } from './moments.js';
import { type PatientIndex, type Patients, patientSums, patientsOf } from './patients.js';

/** Mean squares of a one-way analysis of variance with patients as groups. */
export interface MeanSquares {
  /** MSB, on G − 1 degrees of freedom. */
  between: number;
  /** MSW, on n − G degrees of freedom. */
  within: number;
  /** m₀ = (n − Σm²/n)/(G − 1), the size that stands for unequal groups. */
  size: number;
}

/**
 * Mean squares between and within patients.
 *
 * @returns undefined below two patients, or where no patient has a second eye
 * @throws {RangeError} at a value not finite, or columns of two lengths
 * @source Donner A, Klar N. Design and analysis of cluster randomization trials. 2000 (ANOVA estimator)
 */
export function patientMeanSquares(values: Column, patients: Patients): MeanSquares | undefined {
  expectFinite('patientMeanSquares', values);
  const index = patientsOf('patientMeanSquares', values, patients);
  const { count, sizes, of, meanSize } = index;
  const n = values.length;
  if (count < 2 || n === count) return undefined;
  const centre = meanOf(values) as number;
  const sums = patientSums(values, index, centre);
  let between = 0;
  for (let g = 0; g < count; g++) between += (sums[g] as number) ** 2 / (sizes[g] as number);
  let within = 0;
  for (let i = 0; i < n; i++) {
    const g = of[i] as number;
    within += ((values[i] as number) - centre - (sums[g] as number) / (sizes[g] as number)) ** 2;
  }
  return { between: between / (count - 1), within: within / (n - count), size: (n - meanSize) / (count - 1) };
}

/**
 * Intraclass correlation of fellow eyes by analysis of variance: (MSB − MSW)/(MSB + (m₀ − 1)·MSW).
 *
 * @returns at most 1, may be negative; undefined where no patient has a second eye or all values are equal
 * @throws {RangeError} at a value not finite, or columns of two lengths
 * @source Donner A, Klar N 2000; Shrout PE, Fleiss JL. Psychol Bull 1979;86:420–428, form (1, 1), where sizes are equal
 * @example intraclassCorrelation(Float64Array.of(1, 1, 4, 4), Int32Array.of(1, 1, 2, 2)) // 1
 */
export function intraclassCorrelation(values: Column, patients: Patients): number | undefined {
  const squares = patientMeanSquares(values, patients);
  if (squares === undefined) return undefined;
  const total = squares.between + (squares.size - 1) * squares.within;
  return total > 0 ? (squares.between - squares.within) / total : undefined;
}

/**
 * Design effect of a mean over eyes: max(1, 1 + (Σm²/n − 1)·ICC).
 *
 * @param icc negative counts as 0
 * @source Donner A, Klar N 2000, with Σm²/n for the size of unequal clusters (Kish); floor of 1 by this project
 */
export function designEffect(patients: PatientIndex, icc: number): number {
  return Math.max(1, 1 + (patients.meanSize - 1) * Math.max(0, icc));
}

/**
 * The correlation that subgroups with too few bilateral patients borrow: that of the same measure over the whole
 * audit; undefined where the audit itself has fewer than 5 patients with both eyes.
 */
export function auditCorrelation(values: Column, patients: Patients): number | undefined {
  const index = patientsOf('auditCorrelation', values, patients);
  return index.bilateral < fewestPatients ? undefined : intraclassCorrelation(values, index);
}

/** The design effect that serves every method for shares of one group, and where its correlation is from. */
export interface ShareDesign {
  /** Undefined: no patient has a second eye, or fellow eyes are taken as identical. */
  icc: number | undefined;
  designEffect: number;
  notes: readonly EstimateNote[];
}

/**
 * Design effect of a 0/1 variable: from the group's own correlation with 5 bilateral patients or more, else from that
 * of the whole audit, else fellow eyes are taken as identical, Σm²/n.
 *
 * @param auditIcc from `auditCorrelation` of the same variable
 * @source this project's statistics page; effective n: Rao JNK, Scott AJ. Biometrics 1992;48:577–585
 */
export function shareDesign(hits: Uint8Array, patients: PatientIndex, auditIcc: number | undefined): ShareDesign {
  if (patients.bilateral === 0) return { icc: undefined, designEffect: 1, notes: [] };
  const own = patients.bilateral < fewestPatients ? undefined : intraclassCorrelation(hits, patients);
  if (own !== undefined) return { icc: own, designEffect: designEffect(patients, own), notes: [] };
  if (auditIcc !== undefined) {
    return { icc: auditIcc, designEffect: designEffect(patients, auditIcc), notes: ['icc:whole-audit'] };
  }
  return { icc: undefined, designEffect: patients.meanSize, notes: ['icc:fellow-eyes-identical'] };
}
