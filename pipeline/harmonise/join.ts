import type { FindingParts } from '../../src/findings/builder.js';

/** How far two records of one quantity may differ and still be one. */
export const tolerances = { D: 0.01, deg: 1, mm: 0.01, logMAR: 0.005, keratometry: 0.05, exact: 1e-9 } as const;

/** Whether two numbers are one value; axes are compared round the circle. */
export function agree(a: number, b: number, tolerance: number, circular = false): boolean {
  const apart = Math.abs(a - b);
  const shortest = circular ? Math.min(apart % 180, 180 - (apart % 180)) : apart;
  return shortest <= tolerance + 1e-9;
}

/** The doubt that the same key holds two values. */
export const differs: Pick<FindingParts, 'rule' | 'severity'> = { rule: 'same-key-differs', severity: 'set aside' };

/** The remark that a row was met twice. */
export const twice: Pick<FindingParts, 'rule' | 'severity' | 'effect'> = {
  rule: 'same-key-equal',
  severity: 'note',
  effect: 'kept',
};
