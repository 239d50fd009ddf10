import type { ColumnTable } from 'arquero';
import type { Assembly } from '../visits/assemble.js';
import type { CanonicalTables } from './canonical.js';
import type { Family, Measure } from './measure.js';
import type { Points } from './report.js';

/** Where each eye stands in one family: the first reason that leaves it out, or analysed. */
export interface Flow {
  family: Family;
  /** Statistic names of `flow:<family>`, in order; the last is 'analysed'. */
  steps: readonly string[];
  /** Index into `steps`, one an eye. */
  code: Uint8Array;
}

export type Membership = Readonly<Record<Family, Flow>>;

/** Named groups of eyes: cohorts, or one subgroup field. */
export interface Grouping {
  /** Field of the group key: `technique`, or `cohort` where conditions define them. */
  field: string;
  names: readonly string[];
  /** 1-based index into `names`, one an eye; 0 belongs to none. */
  code: Int32Array;
}

export interface Derived {
  /** Canonical eyes with every measure of the registry as a column. */
  eyes: ColumnTable;
  /** eye, visit, day, and what stability needs: one row an eye and visit with an examination. */
  eyeVisits: ColumnTable;
  assembly: Assembly;
  membership: Membership;
  registry: readonly Measure[];
  /** The audit's cohorts; one group at the most has no comparison. */
  cohorts: Grouping | undefined;
  subgroups: readonly Grouping[];
  /** Groups that only some measures are given for: by target, by incision, by the cornea before surgery. */
  strata: readonly Grouping[];
  points: readonly Points[];
  tables: CanonicalTables;
  counts: {
    /** Eyes whose vertex distance was not recorded and was taken from the policy. */
    vertexAssumed: number;
    /** Eyes without an intended refraction, counted as distance eyes. */
    withoutTarget: number;
    /** Outcome values taken from another day of the visit than its refraction. */
    otherDay: number;
    /** Eyes whose refraction has a cylinder without a usable axis: no vector. */
    axisMissing: number;
    /** Toric eyes whose lens was turned again: they count with the axis before that. */
    repositioned: number;
  };
}
