/** One number of the audit. Everything printed as text anywhere is one of these, taken by key. */
export interface ResultRow {
  measure: string;
  /** 'all', or `field=value` pairs joined by ';' in alphabetical order. */
  group: string;
  statistic: string;
  /** Undefined: not estimable; `note` says why. */
  value: number | undefined;
  ci_low: number | undefined;
  ci_high: number | undefined;
  /** Eyes in this estimate. */
  n: number;
  /** Eyes of the group in the family's analysis: n + missing. */
  eyes: number;
  /** Patients with at least one of the n. */
  patients: number;
  unit: string;
  method: string;
  /** Codes joined by ';'. */
  note: string;
}

export const resultColumns = [
  'measure',
  'group',
  'statistic',
  'value',
  'ci_low',
  'ci_high',
  'n',
  'eyes',
  'patients',
  'unit',
  'method',
  'note',
] as const satisfies readonly (keyof ResultRow)[];
