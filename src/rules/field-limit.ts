import type { Field } from '../plan/fields.js';

/** Ends of a range, both inside; an end may be infinite. */
export type Range = readonly [number, number];

/** Thresholds of one field: outside `possible` a value is set aside, outside `usual` it is asked or noted. */
export interface FieldLimits {
  possible: Range;
  usual: Range | undefined;
  /** Narrower usual range of examinations after surgery. */
  usualAfter: Range | undefined;
  /** What a value outside `usual` is. */
  unusual: 'query' | 'note';
  /** Whether the size without its sign is compared: a cylinder may be written with either. */
  magnitude: boolean;
  /** A unit in which the field is also written: values between 0 and `below` are of it; times `factor` they are ours. */
  otherUnit?: { name: string; below: number; factor: number };
  unit: Exclude<Field['unit'], 'deg' | 'days'> | '°' | 'logMAR';
  reason: string;
  source: string;
}
