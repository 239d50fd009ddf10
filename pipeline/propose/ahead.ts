import type { WordColumn } from '../../src/columns/word-column.js';
import type { FindingParts } from '../../src/findings/builder.js';
import type { Plan } from '../../src/records/plan.js';
import { columnDoubts } from '../ingest/column-doubts.js';
import { fitsPattern } from '../ingest/files.js';
import { judge } from '../ingest/judge.js';
import type { TableRead } from '../ingest/read-table.js';
import { layoutOf, wantedOf } from '../ingest/wanted.js';

/** A file as it was looked at. */
export interface SeenFile {
  file: string;
  label: string;
  read: TableRead;
}

/** What a proposal leaves open says so itself; a run stops there by design. */
const leftOpen = [
  'date-order-open',
  'acuity-scale-open',
  'notation-open',
  'eye-words-open',
  'decimal-open',
  'decimal-mixed',
];

/** The table as a plan's columns make it. */
function asPlanned(read: TableRead, source: Plan['sources'][number]): TableRead {
  const layout = layoutOf(read.header ?? [], wantedOf(source));
  return { ...read, layout, columns: layout.kept.map((index) => read.columns[index] as WordColumn) };
}

/**
 * Where a run of a proposed plan would stop, though nothing is left open there: a unit in a header that contradicts its
 * field, dates as a spreadsheet's numbers. Judged by the code that judges them in the run.
 */
export function stopsAhead(plan: Plan, files: readonly SeenFile[]): readonly (SeenFile & { finding: FindingParts })[] {
  return files.flatMap((seen) => {
    const source = plan.sources.find(({ file }) => file.some((pattern) => fitsPattern(seen.file, pattern)));
    if (!source) return [];
    const table = asPlanned(seen.read, source);
    const { decimal, doubts } = judge(table, source.reading);
    const all = [...doubts, ...columnDoubts(table, source.reading, decimal)];
    return all
      .filter(({ severity, rule }) => severity === 'stop' && !leftOpen.includes(rule))
      .map((finding) => ({ ...seen, finding }));
  });
}
