import type { Kind } from '../../src/records/canonical.js';
import { kinds } from '../../src/records/canonical.js';
import { bytes, integers, numbers } from './growing.js';

/** What a row holds of one kind, in canonical form. */
export interface KindValues {
  own: readonly number[];
  axisGiven?: boolean;
  unread?: boolean;
}

/** One row of one kind in canonical form; undefined where the row holds nothing of it. */
export type KindReader = (row: number) => KindValues | undefined;

/** Where a measurement stands, and when it was taken. */
export interface MeasurementPlace {
  eye: number;
  day: number;
  visit: number;
  device: number;
  source: number;
  block: number;
  row: number;
}

/** Rows of one kind of measurement, one array a column. */
export interface MeasurementRows extends Readonly<Record<keyof MeasurementPlace, Int32Array>> {
  /** Kept 0, or set aside 2 because records of one day contradict each other. */
  state: Uint8Array;
  /** Refractions only: 1 where the row's axis field was filled, whether or not it is an axis. */
  axisGiven: Uint8Array;
  /** 1 where what the kind needs was written, but could not be read. */
  unread: Uint8Array;
  /** Own columns of the kind, in the order of `kinds`. */
  own: readonly Float64Array[];
}

/** Rows of one kind while they are gathered. */
export interface MeasurementRowsBuilder {
  push(place: MeasurementPlace, values: KindValues): void;
  finish(): MeasurementRows;
}

export function measurementRows(kind: Kind): MeasurementRowsBuilder {
  const [eye, day, visit, device] = [integers(), integers(), integers(), integers()];
  const [source, block, row] = [integers(), integers(), integers()];
  const [axisGiven, unread] = [bytes(), bytes()];
  const own = kinds[kind].map(numbers);
  return {
    push(place, values) {
      eye.push(place.eye);
      day.push(place.day);
      visit.push(place.visit);
      device.push(place.device);
      source.push(place.source);
      block.push(place.block);
      row.push(place.row);
      axisGiven.push(values.axisGiven ? 1 : 0);
      unread.push(values.unread ? 1 : 0);
      for (let i = 0; i < own.length; i++) own[i]?.push(values.own[i] as number);
    },
    finish() {
      const eyes = eye.finish();
      return {
        eye: eyes,
        day: day.finish(),
        visit: visit.finish(),
        device: device.finish(),
        source: source.finish(),
        block: block.finish(),
        row: row.finish(),
        state: new Uint8Array(eyes.length),
        axisGiven: axisGiven.finish(),
        unread: unread.finish(),
        own: own.map((column) => column.finish()),
      };
    },
  };
}
