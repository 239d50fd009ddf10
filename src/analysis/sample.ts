import type { Measure } from '../records/measure.js';
import type { ResultRow } from '../records/result.js';
import type { Estimate } from '../statistics/estimate.js';
import { indexPatients, type PatientIndex } from '../statistics/patients.js';

/** The eyes of one group that have a value of one measure. */
export interface Sample {
  measure: Measure;
  group: string;
  values: Float64Array;
  /** Values for absolute errors and shares: the same, unless the measure names others. */
  absolute: Float64Array;
  patients: PatientIndex;
  /** Patients behind `absolute`. */
  absolutePatients: PatientIndex;
  /** Eyes of the group in the family's analysis, with or without a value. */
  eyes: number;
  confidence: number;
  /** Correlations of fellow eyes over the whole audit, by statistic; subgroups borrow them. */
  auditIcc: Map<string, number | undefined>;
}

/** The eyes of a group, in canonical order. */
export interface EyeGroup {
  key: string;
  eyes: Int32Array;
}

export interface SampleColumns {
  values: Float64Array;
  absolute: Float64Array | undefined;
  patient: Int32Array;
  /** 1 where the eye is analysed in the measure's family. */
  analysed: Uint8Array;
}

/** Values of the given eyes. Loops, here and below: iterators and callbacks are several times slower over a registry. */
export function pick(values: Float64Array, eyes: Int32Array): Float64Array {
  const picked = new Float64Array(eyes.length);
  for (let i = 0; i < eyes.length; i++) picked[i] = values[eyes[i] as number] as number;
  return picked;
}

/** Whole numbers of the given eyes, such as their patients' codes. */
export function codesOf(codes: Int32Array, eyes: Int32Array): Int32Array {
  const picked = new Int32Array(eyes.length);
  for (let i = 0; i < eyes.length; i++) picked[i] = codes[eyes[i] as number] as number;
  return picked;
}

/** Those of the given eyes that are analysed. */
export function analysedEyes(eyes: Int32Array, analysed: Uint8Array): Int32Array {
  const kept = new Int32Array(eyes.length);
  let count = 0;
  for (let i = 0; i < eyes.length; i++) {
    const eye = eyes[i] as number;
    if (analysed[eye] === 1) kept[count++] = eye;
  }
  return kept.subarray(0, count);
}

/** Those of the given eyes that have a value; the given list itself where all have. */
function eyesWith(values: Float64Array, eyes: Int32Array): Int32Array {
  const kept = new Int32Array(eyes.length);
  let count = 0;
  for (let i = 0; i < eyes.length; i++) {
    const eye = eyes[i] as number;
    if (!Number.isNaN(values[eye] as number)) kept[count++] = eye;
  }
  return count === eyes.length ? eyes : kept.subarray(0, count);
}

/** The first eye of every patient that has the value, which the eyes of a patient share; else the first eye. */
function oneEyeEach(eyes: Int32Array, patient: Int32Array, values: Float64Array): Int32Array {
  const chosen = new Map<number, number>();
  for (const eye of eyes) {
    const code = patient[eye] as number;
    const known = chosen.get(code);
    if (known === undefined || Number.isNaN(values[known])) chosen.set(code, eye);
  }
  return Int32Array.from(chosen.values());
}

/** The sample of one measure in one group. */
export function sampleOf(
  measure: Measure,
  group: EyeGroup,
  columns: SampleColumns,
  settings: Pick<Sample, 'confidence' | 'auditIcc'>,
): Sample {
  const { values, patient, analysed } = columns;
  const inFamily = analysedEyes(group.eyes, analysed);
  const counted = measure.per === 'patient' ? oneEyeEach(inFamily, patient, values) : inFamily;
  const present = (column: Float64Array): Int32Array => eyesWith(column, counted);
  const codes = (eyes: Int32Array): PatientIndex => indexPatients(codesOf(patient, eyes));
  const eyes = present(values);
  const patients = codes(eyes);
  const others = columns.absolute && present(columns.absolute);
  return {
    measure,
    group: group.key,
    values: pick(values, eyes),
    absolute: columns.absolute && others ? pick(columns.absolute, others) : pick(values, eyes),
    patients,
    absolutePatients: others ? codes(others) : patients,
    eyes: counted.length,
    ...settings,
  };
}

/** What a row says beside its name. */
export type RowParts = Pick<ResultRow, 'statistic'> & Partial<ResultRow>;

/** A results row of a sample; what is left out follows from the sample. */
export function rowOf(sample: Sample, parts: RowParts): ResultRow {
  return {
    measure: sample.measure.vector?.name ?? sample.measure.name,
    group: sample.group,
    value: undefined,
    ci_low: undefined,
    ci_high: undefined,
    n: sample.values.length,
    eyes: sample.eyes,
    patients: sample.patients.count,
    unit: sample.measure.unit,
    method: '',
    note: '',
    ...parts,
  };
}

/** A results row of an estimate with its interval. */
export function estimateRow(
  sample: Sample,
  statistic: string,
  estimate: Estimate,
  unit = sample.measure.unit,
): ResultRow {
  return rowOf(sample, {
    statistic,
    value: estimate.value,
    ci_low: estimate.low,
    ci_high: estimate.high,
    n: estimate.n,
    patients: estimate.patients,
    unit,
    method: estimate.method,
    note: estimate.notes.join(';'),
  });
}

/** A count of eyes, and its kin: whole numbers without an interval. */
export function countRow(sample: Sample, statistic: string, value: number, n = sample.values.length): ResultRow {
  return rowOf(sample, { statistic, value, n, unit: 'eyes', method: 'count' });
}
