import type { FindingsBuilder } from '../../src/findings/builder.js';
import type { RawTable } from '../../src/records/raw-table.js';
import { type Block, mappedColumn } from './blocks.js';
import { twice } from './join.js';
import type { MeasurementRows } from './measurement-rows.js';
import type { RowBooks } from './row-books.js';

/** Counts, for every raw row, how many of its measurements there were and how many were met before. */
export interface Repeats {
  met(source: number, row: number, eye: number): void;
  /** Tells of every row all of whose measurements were met before, and takes it out of the books. */
  close(gathered: readonly MeasurementRows[]): void;
}

export function repeatCounter(raw: readonly RawTable[], books: readonly RowBooks[], findings: FindingsBuilder): Repeats {
  const repeated = new Map<string, { source: number; row: number; eye: number; times: number }>();
  return {
    met(source, row, eye) {
      const key = `${source} ${row}`;
      const known = repeated.get(key);
      if (known) known.times++;
      else repeated.set(key, { source, row, eye, times: 1 });
    },
    close(gathered) {
      for (const { source, row, eye, times } of repeated.values()) {
        const all = gathered.reduce((n, rows) => n + countOf(rows, source, row), 0);
        if (all === times) tellRepeat(source, row, eye);
      }
    },
  };

  function tellRepeat(source: number, row: number, eye: number): void {
    books[source]?.repeats(row);
    findings.add({ ...twice, source, row: raw[source]?.rowNumber(row) ?? 0, eye });
  }
}

function countOf(rows: MeasurementRows, source: number, row: number): number {
  let n = 0;
  for (let i = 0; i < rows.row.length; i++) if (rows.row[i] === row && rows.source[i] === source) n++;
  return n;
}

/** Whether two rows of one block say the same in every mapped column. */
export function saysTheSame(block: Block, a: number, b: number): boolean {
  return block.plan.columns.every(({ field }) => {
    const words = mappedColumn(block, field)?.words;
    return words?.at(a).trim() === words?.at(b).trim();
  });
}
