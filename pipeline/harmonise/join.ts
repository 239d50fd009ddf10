import type { FindingParts, FindingsBuilder } from '../../src/findings/builder.js';
import { fieldNamed } from '../../src/plan/fields.js';
import type { Kind } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';
import { columnOf, type Mapped } from './blocks.js';

/** How far two records of one quantity may differ and still be one. */
export const tolerances = { D: 0.01, deg: 1, mm: 0.01, logMAR: 0.005, keratometry: 0.05, exact: 1e-9 } as const;

/** Whether two numbers are one value; directions are compared round a circle of `period` degrees. */
export function agree(a: number, b: number, tolerance: number, period?: number): boolean {
  const apart = Math.abs(a - b);
  const shortest = period === undefined ? apart : Math.min(apart % period, period - (apart % period));
  return shortest <= tolerance + 1e-9;
}

/** The doubt that the same key holds two values. */
export const differs = { rule: 'same-key-differs', severity: 'set aside' } as const;

/** The remark that a row was met twice. */
export const twice = { rule: 'same-key-equal', severity: 'note', effect: 'kept' } as const;

/** What is needed to weigh two records of one quantity and to tell of them. */
export interface JoinContext {
  raw: readonly RawTable[];
  plan: Plan;
  findings: FindingsBuilder;
}

/** Rank of a file where audit.yaml orders them, the smaller is preferred; files not named come last, alike. */
export function rankOf(file: string, { prefer }: Pick<Plan, 'prefer'>): number {
  const rank = prefer.indexOf(file);
  return rank < 0 ? prefer.length : rank;
}

/** One row of one block of a file. */
export interface RowPlace {
  source: number;
  block: number;
  row: number;
}

/** Of two rows that contradict each other, the one to tell of: the later of one file, else the one given first. */
export function rowToTell<P extends Pick<RowPlace, 'source' | 'row'>>(one: P, other: P): P {
  return one.source === other.source && other.row > one.row ? other : one;
}

/** The mapped columns of a row's block that hold a kind of measurement. */
function columnsOfKind({ source, block }: RowPlace, kind: Kind, { raw, plan }: JoinContext): readonly Mapped[] {
  const table = raw[source];
  const columns = table && plan.sources[table.source]?.blocks[block]?.columns;
  if (!table || !columns) throw new RangeError(`columnsOfKind: no file ${source} with a block ${block}`);
  return columns.filter(({ field }) => fieldNamed(field)?.kind === kind).map((column) => columnOf(table, column));
}

/** Tells that two rows give one measurement different values, at the first column in which what they wrote differs. */
export function tellContradiction(
  one: RowPlace,
  other: RowPlace,
  kind: Kind,
  context: JoinContext,
  parts: Pick<FindingParts, 'severity' | 'effect' | 'eye' | 'day'>,
): void {
  const { source, block, row } = rowToTell(one, other);
  const columns = columnsOfKind({ source, block, row }, kind, context);
  const isOneBlock = one.source === other.source && one.block === other.block;
  const writesOther = ({ words }: Mapped): boolean => words.at(one.row).trim() !== words.at(other.row).trim();
  const column = (isOneBlock ? columns.find(writesOther) : undefined) ?? columns[0];
  context.findings.add({
    rule: differs.rule,
    source,
    row: context.raw[source]?.rowNumber(row) ?? 0,
    column: column?.header,
    field: column?.plan.field,
    written: column?.words.at(row),
    ...parts,
  });
}
