import type { WordColumn } from '../../src/columns/word-column.js';
import { conditionOn } from '../../src/eligibility/condition.js';
import { locateColumn } from '../../src/findings/header.js';
import { parseDate } from '../../src/intake/date.js';
import { missingWords } from '../../src/intake/missing.js';
import { parseNumber } from '../../src/intake/number.js';
import type { BlockPlan, ColumnPlan, Plan, SourcePlan } from '../../src/records/plan.js';
import { keptColumn, type RawTable } from '../../src/records/raw-table.js';

/** One mapped column of a file. */
export interface Mapped {
  plan: ColumnPlan;
  /** Header as written. */
  header: string;
  words: WordColumn;
}

/** One kind of row of one file: what harmonise walks over. */
export interface Block {
  /** Index into the raw tables. */
  source: number;
  /** Index into the source's blocks. */
  block: number;
  raw: RawTable;
  plan: BlockPlan;
  sourcePlan: SourcePlan;
  isMissing: (cell: string) => boolean;
  /** 1 where `only` lets the row in. */
  admitted: Uint8Array;
}

/** The column that a block maps to a field; undefined where it maps none. */
export function mappedColumn(block: Block, field: string): Mapped | undefined {
  const plan = block.plan.columns.find((column) => column.field === field);
  return plan && columnOf(block.raw, plan);
}

/** The words of a column that audit.yaml names. @throws {RangeError} when ingest let an unknown column pass */
export function columnOf(raw: RawTable, plan: ColumnPlan): Mapped {
  const { index } = locateColumn(raw.header, plan);
  if (index === undefined) throw new RangeError(`harmonise: ${raw.file} has no column for ${plan.field}`);
  return { plan, header: raw.header[index] as string, words: keptColumn(raw, index) };
}

/** Conditions of `only`, on the file's own columns, looked at once a word. */
function admittedRows(raw: RawTable, plan: BlockPlan, isMissing: (cell: string) => boolean): Uint8Array {
  const lookup = (header: string) => {
    const { index } = locateColumn(raw.header, { column: header, position: undefined, occurrence: undefined });
    const words = index === undefined ? undefined : keptColumn(raw, index);
    return (row: number) => {
      const word = words?.at(row);
      return word === undefined || isMissing(word) ? undefined : word;
    };
  };
  const { decimal, dateOrder } = raw.read;
  const order = dateOrder === 'none' ? 'year-first' : dateOrder;
  const read = (text: string, asDate: boolean) => (asDate ? parseDate(text, order) : parseNumber(text, { decimal }));
  const tests = plan.only.map((condition) => conditionOn(condition, lookup, read));
  return new Uint8Array(raw.rows).map((_, row) => (tests.every((test) => test(row) === true) ? 1 : 0));
}

/**
 * What blanks of a block mean. In a column that is blank throughout they mean nothing: a complication that nobody ever
 * recorded is not one that never happened.
 */
function meaningsOf(raw: RawTable, plan: BlockPlan, isMissing: (cell: string) => boolean): BlockPlan['blank_means'] {
  const isFilled = (field: string): boolean => {
    const column = plan.columns.find((one) => one.field === field);
    const index = column && locateColumn(raw.header, column).index;
    return index === undefined || !keptColumn(raw, index).words.every(isMissing);
  };
  return Object.fromEntries(Object.entries(plan.blank_means).filter(([field]) => isFilled(field)));
}

/** Every block of every file, in the order of audit.yaml, files of a pattern in name order. */
export function blocksOf(raw: readonly RawTable[], plan: Plan): readonly Block[] {
  return raw.flatMap((table, source) => {
    const sourcePlan = plan.sources[table.source];
    if (!sourcePlan)
      throw new RangeError(`harmonise: ${table.file} belongs to source ${table.source}, which is not planned`);
    const isMissing = missingWords(sourcePlan.reading.missing);
    return sourcePlan.blocks.map((blockPlan, block) => ({
      source,
      block,
      raw: table,
      plan: { ...blockPlan, blank_means: meaningsOf(table, blockPlan, isMissing) },
      sourcePlan,
      isMissing,
      admitted: admittedRows(table, blockPlan, isMissing),
    }));
  });
}
