import type { ResultRow } from '../records/result.js';
import { meanAbsolute, medianAbsolute } from '../statistics/absolute-error.js';
import type { Estimate } from '../statistics/estimate.js';
import { geometricMean } from '../statistics/geometric.js';
import { atOrBelow } from '../statistics/median.js';
import { indexPatients } from '../statistics/patients.js';
import { rootMeanSquare } from '../statistics/spread.js';
import { summary } from '../statistics/summary.js';
import { lineRows } from './change.js';
import { borrowed, correlationRows, locationRows, presence } from './location.js';
import { countRow, estimateRow, type Sample } from './sample.js';
import { beyondRows, binRows, withinRows } from './shares.js';

/** The geometric mean of a ratio; ratios of zero have none, and are counted. Of losses it is that of what is left. */
function geometricRows(sample: Sample): readonly ResultRow[] {
  const { geometric } = sample.measure;
  if (!geometric) return [];
  const { patients, confidence } = sample;
  const values = geometric === 'loss' ? sample.values.map((loss) => 1 - loss / 100) : sample.values;
  const eyes = [...values.keys()].filter((i) => (values[i] as number) > 0);
  const codes = indexPatients(Int32Array.from(eyes, (i) => patients.of[i] as number));
  const positive = Float64Array.from(eyes, (i) => values[i] as number);
  const found = geometricMean(positive, codes, confidence);
  return [
    estimateRow(sample, 'geometric_mean', geometric === 'loss' ? asLoss(found) : found),
    countRow(sample, 'count_zero', values.length - eyes.length),
  ];
}

/** What is left, as a share, told as a loss in percent: the limits change places. */
function asLoss(left: Estimate): Estimate {
  const loss = (share: number | undefined) => (share === undefined ? undefined : 100 * (1 - share));
  return { ...left, value: loss(left.value), low: loss(left.high), high: loss(left.low) };
}

/** Eyes with a value of exactly zero, which what an operation takes often has. */
function zeroRows(sample: Sample): readonly ResultRow[] {
  if (sample.measure.kind !== 'skewed' || sample.measure.geometric) return [];
  return [countRow(sample, 'count_zero', sample.values.filter((value) => value === 0).length)];
}

/** A quantity without a plan to miss: where it lies, how it spreads, and its shares where it has limits. */
export function continuousRows(sample: Sample): readonly ResultRow[] {
  return [
    ...presence(sample),
    ...locationRows(sample),
    ...geometricRows(sample),
    ...zeroRows(sample),
    ...correlationRows(sample),
    ...withinRows(sample),
    ...(sample.measure.inLines ? lineRows(sample) : []),
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
