import type { Derived } from '../../src/records/derived.js';
import type { Findings } from '../../src/records/finding.js';
import type { Fault, Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { Results } from '../../src/results/index.js';
import type { TraceText } from '../../src/screens/trace.js';
import type { Published } from '../7-publish.js';
import type { Everything } from '../publish/everything.js';
import type { Obstacle } from '../publish/prepare.js';

/** What is known when a command ends before the report: after ingest no more than the files and their findings. */
export interface Gathered {
  raw: readonly RawTable[];
  findings: Findings;
  derived?: Derived;
  /** Of a check, for the counts of eyes alone. */
  results?: Results;
}

/** A command that could not start, or that the data stopped. */
export type Halt =
  | { kind: 'faults'; faults: readonly Fault[] }
  | { kind: 'refused'; obstacle: Obstacle }
  | { kind: 'stopped'; plan: Plan; gathered: Gathered; former: boolean };

/** How `run`, `check` and `trace` end; what the screens tell is made from it. */
export type RunOutcome = Halt | { kind: 'published'; plan: Plan; all: Everything; published: Published };
export type CheckOutcome = Halt | { kind: 'checked'; plan: Plan; gathered: Required<Gathered> };
export type TraceOutcome = Halt | { kind: 'traced'; plan: Plan; trace: TraceText } | { kind: 'no eye' };
