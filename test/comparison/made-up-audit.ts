import type { Audit } from '../whole/audit.js';
import { auditOf } from '../whole/audit.js';

/** One operated eye of a made-up audit; what is left out is blank in its file. */
export interface MadeEye {
  patient: string | number;
  side: 'R' | 'L';
  /** Cohort; the first that is declared, or the larger one, is the reference. */
  technique: string;
  /** Achieved − predicted, D. */
  error?: number;
  /** Refractive cylinder: magnitude, D, and the axis of the plus cylinder, deg. */
  cylinder?: number;
  axis?: number;
  complication?: 'none' | 'PCR';
  surgeon?: string;
  length?: number;
  age?: number;
  sex?: 'F' | 'M';
  day?: string;
  /** Day of the examination after surgery. */
  examined?: string;
  /** Prediction error of a second formula, D. */
  second?: number;
}

const columns = [
  ['Code', 'Side', 'Day', 'How', 'Who', 'AL', 'Age', 'Sex', 'Compl', 'Pred', 'Pred 2'],
  ['Seen', 'Sph', 'Cyl', 'Ax'],
].flat();

/** An achieved refraction that is the error, since 0 was predicted; vertex 0, so that vectors stay as written. */
function lineOf(eye: MadeEye): string {
  const { error, cylinder = 0, second } = eye;
  const cells = [
    ...[eye.patient, eye.side, eye.day ?? '2025-01-10', eye.technique, eye.surgeon, eye.length, eye.age, eye.sex],
    ...[eye.complication, 0, second === undefined || error === undefined ? undefined : error - second],
    eye.examined ?? '2025-02-14',
    ...(error === undefined ? [] : [error - cylinder / 2, cylinder, eye.axis]),
  ];
  return columns.map((_, i) => cells[i] ?? '').join(',');
}

const audit = `format: 1
title: Made up
data_until: 2026-01-01
sources:
  - file: eyes.csv
    columns: { patient: Code, eye: Side }
    blocks:
      - holds: surgery
        columns:
          surgery_date: Day
          technique: How
          surgeon: Who
          axial_length: AL
          age: Age
          sex: Sex
          complication: Compl
          predicted_se: Pred
      - holds: prediction
        formula: second
        columns: { predicted_se: Pred 2 }
      - holds: exam
        visit: 1 month
        columns: { exam_date: Seen, sphere: Sph, cylinder: { column: Cyl, notation: signed }, axis: Ax }
        constants: { vertex_mm: 0 }
complications: { posterior_capsule_rupture: [PCR] }
follow_up: { visits: [{ name: 1 month, days: [21, 60] }] }
`;

/**
 * The audit of made-up eyes, through every stage from their file to results rows.
 *
 * @param more further lines of audit.yaml, cohorts among them
 */
export function auditOfEyes(
  eyes: readonly MadeEye[],
  more = 'cohorts: { by: technique, reference: A }',
): Promise<Audit> {
  const text = [columns.join(','), ...eyes.map(lineOf)].join('\n');
  return auditOf(`${audit}${more}\n`, { 'eyes.csv': `${text}\n` });
}

/** Values of one cohort, one eye a patient; `first` sets its patients apart from those of another cohort. */
export function singles(technique: string, errors: readonly number[], first: number): readonly MadeEye[] {
  return errors.map((error, i) => ({ patient: `P${first + i}`, side: 'R', technique, error }));
}

/** Each patient with the right eye in A and the left in B. */
export function fellows(a: readonly number[], b: readonly number[]): readonly MadeEye[] {
  return a.flatMap((error, i): readonly MadeEye[] => [
    { patient: `P${i}`, side: 'R', technique: 'A', error },
    { patient: `P${i}`, side: 'L', technique: 'B', error: b[i] as number },
  ]);
}

/** Value, limits, p, degrees and marks of one statistic in the comparison of B with A. */
export function found({ results }: Audit, statistic: string, measure = 'prediction_error', group = 'technique=B vs A') {
  const { value, ci_low: low, ci_high: high, note, method, n } = results.get(measure, group, statistic);
  const beside = (name: string) => results.find(measure, group, `${name}:${statistic}`);
  const [p, df] = [beside('p'), beside('df')];
  return { value, low, high, n, method, notes: note.split(';'), p: p?.value, test: p?.method, df: df?.value };
}
