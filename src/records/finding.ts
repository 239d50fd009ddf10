import type { CategoryColumn } from '../columns/category-column.js';

export const severities = ['note', 'query', 'set aside', 'stop'] as const;
export type Severity = (typeof severities)[number];

/** What a finding leaves out of the analysis; the words stand in `src/words`. */
export type Effect =
  | 'kept'
  | 'value left out'
  | 'vector left out'
  | 'refraction left out'
  | 'keratometry left out'
  | 'acuity left out'
  | 'prediction left out'
  | 'induced astigmatism left out'
  | 'later examinations left out'
  | 'row left out'
  | 'nothing published';

/**
 * Doubts about the data as columns, not objects: a registry makes hundreds of thousands. Sentences are made
 * when shown.
 */
export interface Findings {
  length: number;
  rule: CategoryColumn;
  /** Index into `severities`. */
  severity: Uint8Array;
  /** Index into the raw tables; −1 where the finding concerns the whole audit. */
  source: Int16Array;
  /** Row as a spreadsheet shows it; 0 where the finding concerns the file or a column. */
  row: Uint32Array;
  /** Header as written. */
  column: CategoryColumn;
  /** Our field. */
  field: CategoryColumn;
  /** The value as written; undefined where there is none, or where it may identify a person. */
  written: CategoryColumn;
  /** Eye index in `eyes`; −1 where it belongs to none. */
  eye: Int32Array;
  /** Days from surgery; −2³¹ where not known. */
  day: Int32Array;
  effect: CategoryColumn;
  /** The limit, the other value, a count: its meaning is the rule's. NaN where there is none. */
  detail: Float64Array;
  /** A second number, where a rule compares; NaN where there is none. */
  other: Float64Array;
}

/** One finding as an object, at the edges. */
export interface Finding {
  rule: string;
  severity: Severity;
  source: number;
  row: number;
  column: string | undefined;
  field: string | undefined;
  written: string | undefined;
  eye: number;
  day: number;
  effect: Effect;
  detail: number;
  other: number;
}
