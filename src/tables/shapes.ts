import type { Plan } from '../records/plan.js';
import type { TypesetTable } from '../records/report.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';

export type UnnumberedTable = Omit<TypesetTable, 'number'>;

/** A published table: undefined where the data do not allow it. */
export type TableBuilder = (results: Results, plan: Plan, words: Words) => UnnumberedTable | undefined;

/** A group of eyes that a table gives a column. */
export interface Column {
  /** Of results rows: 'all', or 'technique=manual'. */
  group: string;
  /** As readers see it. */
  label: string;
}

/** What every table is made from. */
export interface Setting {
  results: Results;
  plan: Plan;
  words: Words;
  /** One a cohort, then all eyes. */
  columns: readonly Column[];
}

/** A results row by its statistic, for one measure and one group. */
export type Asked = (statistic: string) => ResultRow;

/** A cell and the results rows behind its numbers; marks are added when the table is finished. */
export interface ShownCell {
  text: string;
  rows: readonly ResultRow[];
}

/** A row without cells is the label of a block. */
export interface DraftRow {
  label: string;
  indent: 0 | 1;
  cells: readonly ShownCell[];
}

export interface Draft {
  id: string;
  title: string;
  head: TypesetTable['head'];
  rows: readonly DraftRow[];
  /** Level of the intervals, where it is not that of the audit alone. */
  level?: string;
  /** The table's own footnotes; those on intervals, marks and abbreviations follow from the rows shown. */
  footnotes: readonly string[];
}
