import { type ColumnPlace, locateColumn } from '../../src/findings/header.js';
import { type FieldType, fieldNamed } from '../../src/plan/fields.js';
import type { ColumnPlan, Condition, SourcePlan } from '../../src/records/plan.js';

/** One thing that audit.yaml reads from a column. */
export interface Wanted extends ColumnPlace, Partial<Pick<ColumnPlan, 'words' | 'unit' | 'numbers' | 'notation'>> {
  /** Our field, a covariate's own name, or undefined for a condition on their column. */
  field: string | undefined;
  type: FieldType | undefined;
  /** Whether audit.yaml says which scale its bare numbers are of. */
  scaleDeclared: boolean;
}

function conditionColumns(conditions: readonly Condition[]): readonly string[] {
  return conditions.flatMap((condition) => [condition.where, ...conditionColumns(condition.and)]);
}

function ofCondition(column: string): Wanted {
  return {
    column,
    position: undefined,
    occurrence: undefined,
    field: undefined,
    type: undefined,
    scaleDeclared: false,
  };
}

/** Everything that the blocks of a source read: fields, covariates, and the columns that conditions ask about. */
export function wantedOf(source: SourcePlan): readonly Wanted[] {
  return source.blocks.flatMap((block) => [
    ...block.columns.map((column): Wanted => {
      const scaleDeclared = column.numbers !== undefined;
      return { ...column, type: fieldNamed(column.field)?.type, scaleDeclared };
    }),
    ...block.covariates.map((column): Wanted => {
      return { ...column, type: column.type === 'number' ? 'number' : 'category', scaleDeclared: false };
    }),
    ...conditionColumns(block.only).map(ofCondition),
  ]);
}

/** A wanted column that a header does not settle. */
export interface Unsettled {
  wanted: Wanted;
  why: 'missing' | 'twice';
}

/** Where the wanted columns stand in one file. */
export interface Layout {
  /** Header indices of the columns to keep, ascending. */
  kept: readonly number[];
  /** What is read from each kept column. */
  uses: readonly (readonly Wanted[])[];
  unsettled: readonly Unsettled[];
}

/** Places the wanted columns in a header; each column that is not found or met twice is told once. */
export function layoutOf(header: readonly string[], wanted: readonly Wanted[]): Layout {
  const uses = new Map<number, Wanted[]>();
  const unsettled = new Map<string, Unsettled>();
  for (const one of wanted) {
    const located = locateColumn(header, one);
    if (located.index !== undefined) uses.set(located.index, [...(uses.get(located.index) ?? []), one]);
    else unsettled.set(`${one.column} ${one.position} ${one.occurrence}`, { wanted: one, why: located.why });
  }
  const kept = [...uses.keys()].sort((a, b) => a - b);
  return { kept, uses: kept.map((index) => uses.get(index) ?? []), unsettled: [...unsettled.values()] };
}
