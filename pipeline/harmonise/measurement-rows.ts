import type { Kind } from '../../src/records/canonical.js';
import { kinds } from '../../src/records/canonical.js';

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
    own: kinds[kind].map(() => []),
  };
}
