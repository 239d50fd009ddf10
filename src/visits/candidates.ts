import type { ColumnTable } from 'arquero';
import { integersOf, statesOf } from '../columns/table.js';
import { noDay } from '../records/canonical.js';

/** The rows of one measurement table as the choice of a visit needs them: one run of rows an eye, days ascending. */
export interface Candidates {
  /** First row of each eye; the entry behind the last eye closes its run. */
  start: Int32Array;
  day: Int32Array;
  label: Int32Array;
  device: Int32Array;
  source: Int32Array;
  state: Uint8Array;
  /** Whether a row holds all that its kind needs. */
  complete(row: number): boolean;
}

/** First row of each eye in a table whose rows are in canonical order; rows without an eye come first. */
function startOfEyes(eye: Int32Array, eyes: number): Int32Array {
  const start = new Int32Array(eyes + 1);
  let row = 0;
  for (let i = 0; i <= eyes; i++) {
    while (row < eye.length && (eye[row] as number) < i) row++;
    start[i] = row;
  }
  return start;
}

export function candidatesOf(table: ColumnTable, eyes: number, complete: (row: number) => boolean): Candidates {
  return {
    start: startOfEyes(integersOf(table, 'eye'), eyes),
    day: integersOf(table, 'day'),
    label: integersOf(table, 'visit'),
    device: integersOf(table, 'device'),
    source: integersOf(table, 'source'),
    state: statesOf(table),
    complete,
  };
}

/** What a row of an eye must satisfy to be chosen. */
export type Admits = (row: number) => boolean;

/**
 * The admitted row of an eye whose day is nearest to `aim`. Ties: the later day, then the preferred source, then
 * the order of sources and rows. Rows without a day are taken only where no row has one.
 *
 * @param preference  rank of a source, smaller is preferred
 * @returns row, or −1
 */
export function nearestRow(
  of: Candidates,
  eye: number,
  aim: number,
  admits: Admits,
  preference: (source: number) => number,
): number {
  let best = -1;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (let row = of.start[eye] as number; row < (of.start[eye + 1] as number); row++) {
    if (!admits(row)) continue;
    const day = of.day[row] as number;
    const distance = day === noDay ? Number.MAX_VALUE : Math.abs(day - aim);
    if (distance < bestDistance || (distance === bestDistance && isBetterTie(of, row, best, preference))) {
      best = row;
      bestDistance = distance;
    }
  }
  return best;
}

function isBetterTie(of: Candidates, row: number, best: number, preference: (source: number) => number): boolean {
  const laterBy = (of.day[row] as number) - (of.day[best] as number);
  if (laterBy !== 0) return laterBy > 0;
  return preference(of.source[row] as number) < preference(of.source[best] as number);
}
