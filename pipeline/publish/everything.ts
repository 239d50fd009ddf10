import type { Derived } from '../../src/records/derived.js';
import type { Findings } from '../../src/records/finding.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { Figure, TypesetTable } from '../../src/records/report.js';
import type { Results } from '../../src/results/index.js';

/** All that a run has made, handed to the only stage that writes. */
export interface Everything {
  /** audit.yaml, as read. */
  audit: string;
  raw: readonly RawTable[];
  /** Of every stage, in the order of the stages. */
  findings: Findings;
  derived: Derived;
  results: Results;
  typeset: readonly TypesetTable[];
  figures: readonly Figure[];
  /** The same figures with patient codes on their points, in the same order. */
  internalFigures: readonly Figure[];
}
