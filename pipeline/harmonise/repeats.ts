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

/** One number for a row of a file: no file has as many rows. */
const keyOf = (source: number, row: number): number => source * 2 ** 32 + row;

export function repeatCounter(
  raw: readonly RawTable[],
  books: readonly RowBooks[],
  findings: FindingsBuilder,
): Repeats {
  const repeated = new Map<number, { source: number; row: number; eye: number; times: number }>();
  return {
    met(source, row, eye) {
      const key = keyOf(source, row);
      const known = repeated.get(key);
      if (known) known.times++;
      else repeated.set(key, { source, row, eye, times: 1 });
    },
    close(gathered) {
      if (repeated.size === 0) return;
      const all = new Map<number, number>();
      for (const { source, row } of gathered) {
        for (let i = 0; i < source.length; i++) {
          const key = keyOf(source[i] as number, row[i] as number);
          if (repeated.has(key)) all.set(key, (all.get(key) ?? 0) + 1);
        }
      }
      for (const [key, { source, row, eye, times }] of repeated)
        if (all.get(key) === times) tellRepeat(source, row, eye);
    },
  };

  function tellRepeat(source: number, row: number, eye: number): void {
    books[source]?.repeats(row);
    findings.add({ ...twice, source, row: raw[source]?.rowNumber(row) ?? 0, eye });
  }
}

/** Whether two rows of one block say the same in every mapped column. */
export function saysTheSame(block: Block, a: number, b: number): boolean {
  return block.plan.columns.every(({ field }) => {
    const words = mappedColumn(block, field)?.words;
    return words?.at(a).trim() === words?.at(b).trim();
  });
}
