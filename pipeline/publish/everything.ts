import type { CanonicalTables } from '../../src/records/canonical.js';
import type { Derived } from '../../src/records/derived.js';
import type { Findings } from '../../src/records/finding.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { Figure, TypesetTable } from '../../src/records/report.js';
import type { Results } from '../../src/results/index.js';

/** What a command knows of the data when it ends before a report: after ingest the files and their findings. */
export interface Gathered {
  raw: readonly RawTable[];
  /** Query lists that came back; findings name them as if they stood behind the files. */
  answers: readonly RawTable[];
  /** Names of queries that were answered for good. */
  answered: ReadonlySet<string>;
  /** Of every stage so far, in the order of the stages. */
  findings: Findings;
  tables: CanonicalTables | undefined;
  results: Results | undefined;
}

/** What a check ends with; of the results its screen takes the counts of eyes alone. */
export interface Examined extends Gathered {
  tables: CanonicalTables;
  results: Results;
}

/** All that a run has made, handed to the only stage that writes. */
export interface Everything extends Examined {
  /** audit.yaml, as read. */
  audit: string;
  derived: Derived;
  /** What may leave the clinic of the results: small counts and small operators emptied. */
  shared: Results;
  /** Tables and figures of `shared`. */
  typeset: readonly TypesetTable[];
  /** The same tables of all results. */
  internalTypeset: readonly TypesetTable[];
  figures: readonly Figure[];
  /** The same figures with patient codes on their points, in the same order. */
  internalFigures: readonly Figure[];
}
