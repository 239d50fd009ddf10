import type { ResultRow } from '../records/result.js';
import { meanAbsolute, medianAbsolute } from '../statistics/absolute-error.js';
import { geometricMean } from '../statistics/geometric.js';
import { atOrBelow } from '../statistics/median.js';
import { indexPatients } from '../statistics/patients.js';
import { rootMeanSquare } from '../statistics/spread.js';
import { summary } from '../statistics/summary.js';
import { borrowed, correlationRows, locationRows, presence } from './location.js';
import { countRow, estimateRow, type Sample } from './sample.js';
import { beyondRows, binRows, withinRows } from './shares.js';

/** The geometric mean of a ratio; ratios of zero have none, and are counted. */
function geometricRows(sample: Sample): readonly ResultRow[] {
  if (!sample.measure.geometric) return [];
  const { values, patients, confidence } = sample;
  const eyes = [...values.keys()].filter((i) => (values[i] as number) > 0);
  const codes = indexPatients(Int32Array.from(eyes, (i) => patients.of[i] as number));
  const positive = Float64Array.from(eyes, (i) => values[i] as number);
  return [
    estimateRow(sample, 'geometric_mean', geometricMean(positive, codes, confidence)),
    countRow(sample, 'count_zero', values.length - eyes.length),
  ];
}

/** A quantity without a plan to miss: where it lies, how it spreads, and its shares where it has limits. */
export function continuousRows(sample: Sample): readonly ResultRow[] {
  return [
    ...presence(sample),
    ...locationRows(sample),
    ...geometricRows(sample),
    ...correlationRows(sample),
    ...withinRows(sample),
  ];
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
    ...beyondRows(sample),
    ...binRows(sample),
  ];
}
