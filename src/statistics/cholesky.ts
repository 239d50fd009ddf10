/** Below this part of its own sum of squares, a column is what the columns before it make of it. */
const collinear = 1e-9;

/** A symmetric matrix as the product of a lower triangle with itself. */
export interface Cholesky {
  size: number;
  /** Row by row; entries above the diagonal are not used. */
  lower: Float64Array;
}

/**
 * Cholesky decomposition of a matrix of sums of products.
 *
 * @param matrix  size × size, row by row, symmetric
 * @returns the index of the first column that follows from those before it, where there is one
 * @source Golub GH, Van Loan CF. Matrix computations, section 4.2
 * @example cholesky(Float64Array.of(4, 2, 2, 5), 2) // lower 2, 0, 1, 2
 */
export function cholesky(matrix: Float64Array, size: number): Cholesky | number {
  const lower = matrix.slice();
  const at = (row: number, column: number): number => lower[row * size + column] as number;
  for (let j = 0; j < size; j++) {
    let pivot = at(j, j);
    for (let k = 0; k < j; k++) pivot -= at(j, k) ** 2;
    if (!(pivot > collinear * at(j, j))) return j;
    const root = Math.sqrt(pivot);
    lower[j * size + j] = root;
    for (let i = j + 1; i < size; i++) {
      let sum = at(i, j);
      for (let k = 0; k < j; k++) sum -= at(i, k) * at(j, k);
      lower[i * size + j] = sum / root;
    }
  }
  return { size, lower };
}

/** x with matrix·x = right. */
export function solve({ size, lower }: Cholesky, right: Float64Array): Float64Array {
  const x = right.slice();
  for (let i = 0; i < size; i++) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k++) sum -= (lower[i * size + k] as number) * (x[k] as number);
    x[i] = sum / (lower[i * size + i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < size; k++) sum -= (lower[k * size + i] as number) * (x[k] as number);
    x[i] = sum / (lower[i * size + i] as number);
  }
  return x;
}
