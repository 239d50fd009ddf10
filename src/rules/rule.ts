import type { FindingParts } from '../findings/builder.js';
import type { CanonicalTables, Kind } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';
import type { Assembly } from '../visits/assemble.js';

/** A value of an examination that is set aside without the measurement it stands in. */
export type SideValue = 'vertex' | 'lane';

/** A row of a measurement table, one value in it, a prediction, or one field of an eye. */
export type Place =
  | { table: Kind; row: number; value?: SideValue }
  | { table: 'predictions'; row: number }
  | { table: 'eyes'; row: number; field: string };

/** What a doubt makes of the measurement it is about: asked about and kept, or set aside as a whole. */
export type Mark = Place & { as: 'queried' | 'set aside' };

/** What a rule is given, and how it tells what it found. */
export interface RuleContext {
  /** States are those that the rules of earlier rounds have set. */
  tables: CanonicalTables;
  raw: readonly RawTable[];
  plan: Plan;
  /** The examinations before surgery and of every visit, as the states stand now. */
  assembly(): Assembly;
  /**
   * @param finding  what is doubtful
   * @param marks    what it makes of measurements; none where it concerns no single one, or is only noted
   */
  report(finding: FindingParts, ...marks: readonly Mark[]): void;
}

/** One rule of plausibility. */
export interface Rule {
  /** As `quality.off` names it. */
  id: string;
  /** As findings and their words name what it tells, where that is more than its own id. */
  tells?: readonly string[];
  judge(context: RuleContext): void;
}
