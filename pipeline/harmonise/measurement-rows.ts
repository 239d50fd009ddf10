import type { Kind } from '../../src/records/canonical.js';
import { kinds } from '../../src/records/canonical.js';

/** One row of one kind in canonical form; undefined where the row holds nothing of it. */
export type KindReader = (row: number) => { own: readonly number[]; axisGiven?: boolean; unread?: boolean } | undefined;

/** Rows of one kind of measurement while they are gathered, one array a column. */
export interface MeasurementRows {
  eye: number[];
  day: number[];
  visit: number[];
  device: number[];
  source: number[];
  block: number[];
  row: number[];
  /** Kept 0, or set aside 2 because records of one day contradict each other. */
  state: number[];
  /** Refractions only: 1 where the row's axis field was filled, whether or not it is an axis. */
  axisGiven: number[];
  /** 1 where what the kind needs was written, but could not be read. */
  unread: number[];
  /** Own columns of the kind, in the order of `kinds`. */
  own: number[][];
}

export function measurementRows(kind: Kind): MeasurementRows {
  return {
    eye: [],
    day: [],
    visit: [],
    device: [],
    source: [],
    block: [],
    row: [],
    state: [],
    axisGiven: [],
    unread: [],
    own: kinds[kind].map(() => []),
  };
}
