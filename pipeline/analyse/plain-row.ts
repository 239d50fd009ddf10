import type { ResultRow } from '../../src/records/result.js';

/** What a row of the audit as a whole says beside its group. */
export type PlainParts = Pick<ResultRow, 'measure' | 'statistic' | 'value'> & Partial<ResultRow>;

/** A count of eyes, or what is told like one; whatever else it is, `parts` say. */
export function plainRow(parts: PlainParts, group: string, eyes: number): ResultRow {
  return {
    group,
    ci_low: undefined,
    ci_high: undefined,
    n: parts.value ?? 0,
    eyes,
    patients: 0,
    unit: 'eyes',
    method: 'count',
    note: '',
    ...parts,
  };
}
