import { integersOf } from '../columns/table.js';
import type { CanonicalTables } from '../records/canonical.js';

/** Right and left eye of every patient with both in the audit. */
export function pairsOfEyes({ eyes }: CanonicalTables): readonly (readonly [right: number, left: number])[] {
  const patient = integersOf(eyes, 'patient');
  // Eyes stand in the order of patients, right before left.
  return [...patient.keys()].filter((eye) => patient[eye] === patient[eye + 1]).map((eye) => [eye, eye + 1] as const);
}

/** Mean of the values that are there. */
export function meanOf(values: Float64Array): number {
  const given = values.filter((value) => !Number.isNaN(value));
  return given.reduce((sum, value) => sum + value, 0) / given.length;
}

/** Of two eyes that differ, the one further from what most eyes have: the likelier slip. */
export function furtherFrom(mean: number, values: Float64Array, [a, b]: readonly [number, number]): [number, number] {
  const apart = (eye: number): number => Math.abs((values[eye] as number) - mean);
  return apart(b) > apart(a) ? [b, a] : [a, b];
}
