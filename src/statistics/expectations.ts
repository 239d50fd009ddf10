/** Promises that callers of this folder make; a broken one is a mistake in our code, never in the data. */

/** @throws {RangeError} unless `value` is a finite number above zero */
export function expectPositive(caller: string, name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) {
    throw new RangeError(`${caller}: ${name} is ${value}; expected a finite number above 0`);
  }
}

/** @throws {RangeError} unless 0 ≤ `value` ≤ 1 */
export function expectProbability(caller: string, name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${caller}: ${name} is ${value}; expected from 0 to 1`);
}

/** @throws {RangeError} unless `confidence` lies strictly between 0 and 1, as 0.95 does */
export function expectConfidence(caller: string, confidence: number): void {
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(`${caller}: confidence is ${confidence}; expected above 0 and below 1, such as 0.95`);
  }
}

/** @throws {RangeError} at the first value that is not a finite number: missing values are counted and set aside before */
export function expectFinite(caller: string, values: ArrayLike<number>): void {
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) {
      throw new RangeError(`${caller}: value ${i} is ${values[i]}; expected a finite number`);
    }
  }
}

/** @throws {RangeError} unless two columns are parallel */
export function expectParallel(caller: string, a: ArrayLike<number>, b: ArrayLike<number>): void {
  if (a.length !== b.length) {
    throw new RangeError(`${caller}: columns of ${a.length} and ${b.length}; expected one length`);
  }
}
