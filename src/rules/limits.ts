import type { Plan } from '../records/plan.js';
import type { FieldLimits } from './field-limit.js';
import { fieldLimits } from './field-limits.js';

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
