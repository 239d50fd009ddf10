import { referencePresent, referenceText } from '../shared-reference.js';

/** One worked example of shared/reference/stat-examples.json: data, and what R 4.2.2 makes of them. */
export interface Example {
  id: string;
  source: string;
  // biome-ignore lint/suspicious/noExplicitAny: every example has a shape of its own
  input: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  expected: any;
  /** Relative; absolute below 1e-12. */
  tolerance: number;
}

const examples: readonly Example[] = referencePresent ? JSON.parse(referenceText('stat-examples.json')).examples : [];

export const exampleIds = examples.map(({ id }) => id);

/** An example by its id. @throws {RangeError} when the file has none of that name */
export function example(id: string): Example {
  const found = examples.find((one) => one.id === id);
  if (!found) throw new RangeError(`example: no ${id} in stat-examples.json`);
  return found;
}

/** Whether a value agrees with a reference at the file's relative tolerance, absolutely below 1e-12. */
export function agrees(value: number | undefined, reference: number, tolerance: number): boolean {
  return value !== undefined && Math.abs(value - reference) <= Math.max(tolerance * Math.abs(reference), 1e-12);
}
