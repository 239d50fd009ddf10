import type { ResultRow } from '../records/result.js';
import { fewestPatients } from '../statistics/estimate.js';
import { zeroEventLimit } from '../statistics/share.js';
import { presence } from './location.js';
import { rowOf, type Sample } from './sample.js';
import { hitsOf, shareRows } from './shares.js';

/** A yes/no property: exact intervals for what happened in surgery, Wilson's for the rest. */
export function propertyRows(sample: Sample): readonly ResultRow[] {
  const hits = hitsOf(sample.values, (value) => value === 1);
  const isSafety = sample.measure.family === 'safety';
  const method = isSafety ? 'exact' : 'wilson';
  return [
    ...presence(sample),
    ...shareRows(sample, { share: 'share', count: 'count', hits, patients: sample.patients, method }),
    ...(isSafety && !hits.includes(1) ? zeroEventRows(sample) : []),
  ];
}

/** What no event among these patients still allows; the patients are counted, not their eyes. */
function zeroEventRows(sample: Sample): readonly ResultRow[] {
  const { count } = sample.patients;
  if (count < fewestPatients) return [];
  const value = zeroEventLimit(count, sample.confidence);
  return [rowOf(sample, { statistic: 'share_upper_one_sided', value, unit: 'share', method: 'zero-events' })];
}
