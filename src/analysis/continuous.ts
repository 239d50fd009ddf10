import type { ResultRow } from '../records/result.js';
import { meanAbsolute, medianAbsolute } from '../statistics/absolute-error.js';
import { atOrBelow } from '../statistics/median.js';
import { rootMeanSquare } from '../statistics/spread.js';
import { summary } from '../statistics/summary.js';
import { borrowed, correlationRows, locationRows, presence } from './location.js';
import { estimateRow, type Sample } from './sample.js';
import { binRows, withinRows } from './shares.js';

/** A quantity without a plan to miss: where it lies, how it spreads, and its shares where it has limits. */
export function continuousRows(sample: Sample): readonly ResultRow[] {
  return [...presence(sample), ...locationRows(sample), ...correlationRows(sample), ...withinRows(sample)];
}

/** A signed error: the same, with its size without sign and its histogram. */
export function errorRows(sample: Sample): readonly ResultRow[] {
  const { absolute, absolutePatients: patients, confidence } = sample;
  const magnitudes = absolute.map(Math.abs);
  const middle = summary(magnitudes).median;
  const icc =
    middle === undefined ? undefined : borrowed(sample, 'median_absolute', atOrBelow(magnitudes, middle), patients);
  return [
    ...presence(sample),
    ...locationRows(sample),
    estimateRow(sample, 'mean_absolute', meanAbsolute(absolute, patients, confidence)),
    estimateRow(sample, 'median_absolute', medianAbsolute(absolute, patients, confidence, icc)),
    estimateRow(sample, 'root_mean_square', rootMeanSquare(absolute, patients, confidence)),
    ...correlationRows(sample),
    ...withinRows(sample),
    ...binRows(sample),
  ];
}
