import type { FileBooks } from '../../src/records/canonical.js';
import type { RawTable } from '../../src/records/raw-table.js';

/** Why a row gave nothing; the order in which reasons are preferred where blocks of one row differ. */
const rowReasons = [
  'row-ragged',
  'patient-missing',
  'eye-missing',
  'eye-both',
  'surgery-date-missing',
  'outside-period',
  'eye-not-operated',
  'day-unknown',
  'duplicate-row',
  'other-kind-of-row',
  'no-values',
] as const;
export type RowReason = (typeof rowReasons)[number];

/** Keeps the books of one file: every row is used, or set aside for a reason. */
export interface RowBooks {
  use(row: number): void;
  setAside(row: number, reason: RowReason): void;
  /** Takes back that a row was used: everything in it was met before. */
  repeats(row: number): void;
  close(source: number): FileBooks;
}

const open = 255;

/** A row counts as used as soon as one of its blocks used it; else its weightiest reason counts. */
export function rowBooks(raw: RawTable): RowBooks {
  const used = new Uint8Array(raw.rows);
  const reason = new Uint8Array(raw.rows).fill(open);
  return {
    use(row) {
      used[row] = 1;
    },
    setAside(row, why) {
      reason[row] = Math.min(reason[row] as number, rowReasons.indexOf(why));
    },
    repeats(row) {
      used[row] = 0;
      reason[row] = rowReasons.indexOf('duplicate-row');
    },
    close(source) {
      const counts: Partial<Record<RowReason, number>> = raw.read.ragged > 0 ? { 'row-ragged': raw.read.ragged } : {};
      let usedRows = 0;
      for (let row = 0; row < raw.rows; row++) {
        if (used[row]) usedRows++;
        else {
          const why = rowReasons[reason[row] as number] ?? 'no-values';
          counts[why] = (counts[why] ?? 0) + 1;
        }
      }
      return { source, read: raw.rows + raw.read.ragged, used: usedRows, setAside: counts };
    },
  };
}
