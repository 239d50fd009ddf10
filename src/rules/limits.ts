import type { Field } from '../plan/fields.js';
import type { Plan } from '../records/plan.js';
import { fieldLimits } from './field-limits.js';

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

/**
 * The limits of a field as they hold in this audit. A usual range that the audit declares replaces both of ours, so
 * that a referral centre is not asked about its every eye.
 *
 * @returns undefined where no limit is known of the field
 * @example limitsOf('axial_length', plan)?.possible // [18, 38]
 */
export function limitsOf(field: string, plan: Plan): FieldLimits | undefined {
  const entry = fieldLimits[field];
  if (!entry) return undefined;
  const declared = plan.quality.limits[field];
  return {
    ...entry,
    possible: declared?.possible ?? entry.possible,
    usual: declared?.usual ?? entry.usual,
    usualAfter: declared?.usual ? undefined : entry.usualAfter,
    unusual: entry.unusual ?? 'query',
    magnitude: entry.magnitude ?? false,
    reason: declared?.reason ?? entry.reason,
    source: declared ? 'audit.yaml' : entry.source,
  };
}
