import type { FindingParts } from '../findings/builder.js';
import type { CanonicalTables, Kind } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';

/** A row of a measurement table, or one field of an eye. */
export type Place = { table: Kind; row: number } | { table: 'eyes'; row: number; field: string };

/** What a doubt makes of the measurement it is about: asked about and kept, or set aside as a whole. */
export type Mark = Place & { as: 'queried' | 'set aside' };

/** What a rule is given, and how it tells what it found. */
export interface RuleContext {
  tables: CanonicalTables;
  raw: readonly RawTable[];
  plan: Plan;
  /**
   * @param finding  what is doubtful
   * @param mark     what it makes of a measurement; none where it concerns no single one, or is only noted
   */
  report(finding: FindingParts, mark?: Mark): void;
}

/** One rule of plausibility. */
export interface Rule {
  /** As findings, `quality.off` and the words name it. */
  id: string;
  judge(context: RuleContext): void;
}
