import { rangeRule } from './range.js';

/** A time below nothing is set aside. */
export const timeRange = rangeRule('time-range', {
  phaco_time_s: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
  laser_time_s: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
  case_time_min: { table: 'eyes', effect: 'value left out', spoils: 'measurement' },
});
