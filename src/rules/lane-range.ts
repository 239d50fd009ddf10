import { rangeRule } from './range.js';

/** A distance of the chart that no lane has is set aside; the refraction stands without it. */
export const laneRange = rangeRule('lane-range', {
  lane_m: { table: 'refractions', effect: 'value left out', spoils: 'value', value: 'lane' },
});
