/** One covariate of every eye of the audit. */
export type Covariate =
  | { name: string; kind: 'number'; values: ArrayLike<number> }
  /** Code 0 is missing. */
  | { name: string; kind: 'category'; codes: ArrayLike<number> };

/** Columns of the model, in this order: the constant, the compared cohort, then the covariates. */
export const cohortColumn = 1;
const firstCovariate = 2;

/**
 * Rows of a linear model: every eye has the constant, its cohort and one entry a covariate, whatever the number of
 * categories. Numbers are centred and in units of their SD, so that sums keep their digits.
 */
export interface ModelMatrix {
  eyes: number;
  /** Entries of one eye. */
  width: number;
  /** Column of each entry, eye by eye; −1: the first category met, which has none. */
  column: Int32Array;
  value: Float64Array;
  columns: number;
  /** Covariate that each column belongs to; '' for the constant and the cohort. */
  names: readonly string[];
}

/** Whether every covariate of an eye is known. */
export function isComplete(covariates: readonly Covariate[], eye: number): boolean {
  return covariates.every((one) =>
    one.kind === 'number' ? !Number.isNaN(one.values[eye] as number) : one.codes[eye] !== 0,
  );
}

/** Entries of one covariate, and the columns that it adds. */
interface Entries {
  columns: number;
  column: Int32Array;
  value: Float64Array;
}

function numberEntries(values: ArrayLike<number>, eyes: Int32Array, at: number): Entries {
  const picked = new Float64Array(eyes.length);
  let sum = 0;
  for (let i = 0; i < eyes.length; i++) {
    picked[i] = values[eyes[i] as number] as number;
    sum += picked[i] as number;
  }
  const centre = sum / picked.length;
  let squares = 0;
  for (let i = 0; i < picked.length; i++) squares += ((picked[i] as number) - centre) ** 2;
  const scale = Math.sqrt(squares / picked.length) || 1;
  const value = picked.map((one) => (one - centre) / scale);
  return { columns: 1, column: new Int32Array(eyes.length).fill(at), value };
}

function categoryEntries(codes: ArrayLike<number>, eyes: Int32Array, at: number): Entries {
  const places = new Map<number, number>();
  const column = eyes.map((eye) => {
    const code = codes[eye] as number;
    const place = places.get(code) ?? places.size;
    places.set(code, place);
    return place === 0 ? -1 : at + place - 1;
  });
  return { columns: Math.max(0, places.size - 1), column, value: new Float64Array(eyes.length).fill(1) };
}

/**
 * The matrix of a linear model of cohort and covariates.
 *
 * @param eyes      those of the compared cohort first; every covariate of each is known
 * @param compared  how many of them are of the compared cohort
 */
export function modelMatrix(eyes: Int32Array, compared: number, covariates: readonly Covariate[]): ModelMatrix {
  const width = firstCovariate + covariates.length;
  const column = new Int32Array(eyes.length * width);
  const value = new Float64Array(eyes.length * width);
  for (let i = 0; i < eyes.length; i++) {
    value[i * width] = 1;
    column[i * width + cohortColumn] = cohortColumn;
    value[i * width + cohortColumn] = i < compared ? 1 : 0;
  }
  const names = ['', ''];
  covariates.forEach((one, j) => {
    const at = names.length;
    const made = one.kind === 'number' ? numberEntries(one.values, eyes, at) : categoryEntries(one.codes, eyes, at);
    for (let i = 0; i < eyes.length; i++) {
      column[i * width + firstCovariate + j] = made.column[i] as number;
      value[i * width + firstCovariate + j] = made.value[i] as number;
    }
    names.push(...new Array<string>(made.columns).fill(one.name));
  });
  return { eyes: eyes.length, width, column, value, columns: names.length, names };
}
