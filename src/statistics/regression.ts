import { type Cholesky, cholesky, solve } from './cholesky.js';
import { tQuantile } from './distributions.js';
import { type Estimate, type EstimateMethod, type EstimateNote, estimate } from './estimate.js';
import { expectConfidence, expectFinite, expectParallel } from './expectations.js';
import { meanOf } from './moments.js';
import { type PatientIndex, type Patients, patientsOf } from './patients.js';

/** What a least-squares fit over eyes can be asked. */
export interface Regression {
  /** One a column, in their order. */
  coefficients: Float64Array;
  /** Share of the variance of y that the fit explains; undefined where y does not vary. */
  rSquared: number | undefined;
  /** Σ of row × coefficient, with its interval: the fit at a place, or, for a row of one 1, a coefficient. */
  at(row: ArrayLike<number>, confidence: number): Estimate;
}

/** Xᵀ·X of columns. */
function products(columns: readonly Float64Array[]): Float64Array {
  const size = columns.length;
  const matrix = new Float64Array(size * size);
  columns.forEach((a, i) => {
    columns.forEach((b, j) => {
      for (let eye = 0; eye < a.length; eye++) {
        matrix[i * size + j] = (matrix[i * size + j] as number) + (a[eye] as number) * (b[eye] as number);
      }
    });
  });
  return matrix;
}

const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
};

/** (XᵀX)⁻¹·Σ x·residual over the eyes of each patient: what each patient adds to every coefficient. */
function influences(
  columns: readonly Float64Array[],
  residuals: Float64Array,
  root: Cholesky,
  patients: PatientIndex,
): readonly Float64Array[] {
  const sums = Array.from({ length: patients.count }, () => new Float64Array(columns.length));
  residuals.forEach((residual, eye) => {
    const own = sums[patients.of[eye] as number] as Float64Array;
    columns.forEach((column, j) => {
      own[j] = (own[j] as number) + (column[eye] as number) * residual;
    });
  });
  return sums.map((sum) => solve(root, sum));
}

/** Covariance of the coefficients, G/(G − p)·Σ u·uᵀ over patients. */
function covarianceOf(pieces: readonly Float64Array[], size: number): Float64Array {
  const covariance = new Float64Array(size * size);
  const factor = pieces.length / (pieces.length - size);
  for (const u of pieces) {
    for (let at = 0; at < covariance.length; at++) {
      const [i, j] = [Math.floor(at / size), at % size];
      covariance[at] = (covariance[at] as number) + factor * (u[i] as number) * (u[j] as number);
    }
  }
  return covariance;
}

/**
 * Ordinary least squares of y on columns, over eyes; both eyes of a patient count as one independent piece.
 *
 * Intervals: t(G − p)·√(a′Va), V = G/(G − p)·Σ u·u′, u = (X′X)⁻¹·Σ x·residual over the eyes of each of the G patients, p
 * columns. With one column of 1 it is the mean and its interval.
 *
 * @param columns   p of them, one value an eye; the constant is one of them
 * @param y         one an eye
 * @param patients  code of each eye's patient
 * @param method    code of what is fitted
 * @returns undefined without eyes, or where a column follows from those before it
 * @throws {RangeError} at a value not finite, or columns of different lengths
 * @source least squares; variance: Liang KY, Zeger SL. Biometrika 1986;73:13–22; G/(G − p) and t(G − p) extend this
 * project's interval of the mean and are its judgement
 * @example regression([ones, x], y, patients, 'line-patient-t')?.coefficients // [intercept, slope]
 */
export function regression(
  columns: readonly Float64Array[],
  y: Float64Array,
  patients: Patients,
  method: EstimateMethod,
): Regression | undefined {
  for (const column of [...columns, y]) expectFinite('regression', column);
  for (const column of columns) expectParallel('regression', column, y);
  const index = patientsOf('regression', y, patients);
  const size = columns.length;
  const root = y.length === 0 ? 0 : cholesky(products(columns), size);
  if (typeof root === 'number') return undefined;
  const coefficients = solve(
    root,
    Float64Array.from(columns, (column) => dot(column, y)),
  );
  const fitted = (eye: number): number =>
    columns.reduce((sum, column, j) => sum + (column[eye] as number) * (coefficients[j] as number), 0);
  const residuals = y.map((value, eye) => value - fitted(eye));
  const about = { n: y.length, patients: index.count, method };
  const df = index.count - size;
  const covariance = df > 0 ? covarianceOf(influences(columns, residuals, root, index), size) : undefined;
  return {
    coefficients,
    rSquared: rSquaredOf(y, residuals),
    at(row, confidence) {
      expectConfidence('regression', confidence);
      const value = dot(row, coefficients);
      return estimate(about, value, () => {
        if (covariance === undefined) return 'not-estimable:few-patients' satisfies EstimateNote;
        const half = tQuantile((1 + confidence) / 2, df) * Math.sqrt(quadratic(covariance, row));
        return [value - half, value + half];
      });
    },
  };
}

/** a′Va. */
function quadratic(matrix: Float64Array, row: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < row.length; i++) {
    for (let j = 0; j < row.length; j++) {
      sum += (row[i] as number) * (matrix[i * row.length + j] as number) * (row[j] as number);
    }
  }
  return Math.max(0, sum);
}

function rSquaredOf(y: Float64Array, residuals: Float64Array): number | undefined {
  const centre = meanOf(y) as number;
  const total = y.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  return total > 0 ? 1 - dot(residuals, residuals) / total : undefined;
}
