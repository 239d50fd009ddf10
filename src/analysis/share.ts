import type { ResultRow } from '../records/result.js';
import { presence } from './location.js';
import type { Sample } from './sample.js';
import { hitsOf, shareRows } from './shares.js';

/** A yes/no property: exact intervals for what happened in surgery, Wilson's for the rest. */
export function propertyRows(sample: Sample): readonly ResultRow[] {
  return [
    ...presence(sample),
    ...shareRows(sample, {
      share: 'share',
      count: 'count',
      hits: hitsOf(sample.values, (value) => value === 1),
      patients: sample.patients,
      method: sample.measure.family === 'safety' ? 'exact' : 'wilson',
    }),
  ];
}
