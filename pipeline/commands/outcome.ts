import type { Fault, Plan } from '../../src/records/plan.js';
import type { Figure } from '../../src/records/report.js';
import type { TraceText } from '../../src/screens/trace.js';
import type { Published } from '../7-publish.js';
import type { Everything, Examined, Gathered } from '../publish/everything.js';
import type { Obstacle } from '../publish/prepare.js';

/** A command that could not start, or that the data stopped. */
export type Halt =
  | { kind: 'faults'; faults: readonly Fault[] }
  | { kind: 'refused'; obstacle: Obstacle }
  /** `folder` is what `publishCheck` wrote. */
  | { kind: 'stopped'; plan: Plan; found: Gathered; folder: string };

/** How `run`, `check` and `trace` end; what their screens tell is made from it. */
export type RunOutcome = Halt | { kind: 'published'; plan: Plan; all: Everything; published: Published };
export type CheckOutcome = Halt | { kind: 'checked'; plan: Plan; found: Examined; folder: string };
export type DrawOutcome =
  | Halt
  | { kind: 'drawn'; plan: Plan; figure: Figure; files: readonly string[] }
  | { kind: 'no figure'; known: readonly string[] }
  | { kind: 'no artwork'; known: readonly string[] }
  /** `least`: millimetres. */
  | { kind: 'no room'; least: string }
  | { kind: 'no cohort'; known: readonly string[] };
export type TraceOutcome = Halt | { kind: 'traced'; plan: Plan; trace: TraceText } | { kind: 'no eye' };
