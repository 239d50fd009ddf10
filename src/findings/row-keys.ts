import { type Laterality, type LateralityWords, parseLaterality } from '../intake/laterality.js';
import { unwrapped } from '../intake/signs.js';
import type { BlockPlan, ColumnPlan } from '../records/plan.js';
import { keptColumn, type RawTable } from '../records/raw-table.js';
import { locateColumn } from './header.js';

/** Whose eye a row of a file is about, before any table exists. */
export interface RowKeys {
  /** Code as written, without outer blanks; '' where none is given. */
  patient(row: number): string;
  eye(row: number): Laterality | 'both' | undefined;
}

function wordsOf(raw: RawTable, block: BlockPlan, field: string): { cell(row: number): string; plan?: ColumnPlan } {
  const constant = block.constants[field];
  if (constant !== undefined) return { cell: () => String(constant) };
  const plan = block.columns.find((column) => column.field === field);
  const located = plan && locateColumn(raw.header, plan);
  if (!plan || located?.index === undefined) return { cell: () => '' };
  const column = keptColumn(raw, located.index);
  return { cell: (row) => column.at(row), plan };
}

/** The keys of a file's rows, as one of its blocks reads them. */
export function rowKeys(raw: RawTable, block: BlockPlan): RowKeys {
  const patient = wordsOf(raw, block, 'patient');
  const eye = wordsOf(raw, block, 'eye');
  const declared: LateralityWords = eye.plan?.words ?? {};
  const known = new Map<string, Laterality | 'both' | undefined>();
  return {
    patient: (row) => unwrapped(patient.cell(row)),
    eye(row) {
      const word = eye.cell(row);
      if (!known.has(word)) known.set(word, parseLaterality(word, declared));
      return known.get(word);
    },
  };
}
