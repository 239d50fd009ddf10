import type { Derived } from '../records/derived.js';
import type { Plan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';
import type { TypesetTable } from '../records/report.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';

/** What a trace looks at. */
export interface Traced {
  derived: Derived;
  raw: readonly RawTable[];
  results: Results;
  tables: readonly TypesetTable[];
  plan: Plan;
  words: Words;
  eye: number;
}
