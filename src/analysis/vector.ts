import { axisOf } from '../optics/axis.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import type { ResultRow } from '../records/result.js';
import { type Centroid, centroid } from '../statistics/centroid.js';
import type { Ellipse } from '../statistics/ellipse.js';
import { meanInterval } from '../statistics/mean.js';
import { atOrBelow, median } from '../statistics/median.js';
import { summary } from '../statistics/summary.js';
import { borrowed, presence } from './location.js';
import { estimateRow, type RowParts, rowOf, type Sample } from './sample.js';
import { withinRows } from './shares.js';

/** Length of each vector; NaN where it does not exist. */
export function magnitudesOf(x: Float64Array, y: Float64Array): Float64Array {
  return x.map((value, eye) => vectorMagnitude(value, y[eye] as number));
}

/** One estimate of a centroid as a row; undefined is told with its reason. */
function row(
  sample: Sample,
  found: Centroid,
  statistic: string,
  value: number | undefined,
  more: Partial<RowParts> = {},
): ResultRow {
  const reason = found.notes.find((note) => note.startsWith('not-estimable') || note.startsWith('degenerate'));
  const because = value === undefined ? (reason ?? 'not-estimable:one-eye') : found.notes.join(';');
  return rowOf(sample, { statistic, value, method: found.method, note: because, ...more });
}

function ellipseRows(
  sample: Sample,
  found: Centroid,
  name: string,
  ellipse: Ellipse | undefined,
): readonly ResultRow[] {
  return [
    row(sample, found, `${name}_major`, ellipse?.major),
    row(sample, found, `${name}_minor`, ellipse?.minor),
    row(sample, found, `${name}_angle`, ellipse?.tilt, { unit: 'deg' }),
  ];
}

/** Length of each vector: its median, and the shares within the limits of the measure. */
function magnitudeRows(sample: Sample, magnitudes: Float64Array): readonly ResultRow[] {
  const { patients, confidence } = sample;
  const middle = summary(magnitudes).median;
  const icc = middle === undefined ? undefined : borrowed(sample, 'median_magnitude', atOrBelow(magnitudes, middle));
  return [
    estimateRow(sample, 'median_magnitude', median(magnitudes, patients, confidence, icc)),
    ...withinRows({ ...sample, absolute: magnitudes, absolutePatients: patients }),
  ];
}

/**
 * Cylinder vectors of one group: centroid with its region, the region of the next eye, spread, test against zero.
 *
 * @param sample  first components, D; @param y  second components of the same eyes
 */
export function vectorRows(sample: Sample, y: Float64Array): readonly ResultRow[] {
  const x = sample.values;
  const found = centroid(x, y, sample.patients, sample.confidence);
  const isThere = found.x !== undefined && found.y !== undefined;
  // A centroid of exactly zero has no direction.
  const axis = isThere ? axisOf(found.x as number, found.y as number) : Number.NaN;
  const magnitude = isThere ? vectorMagnitude(found.x as number, found.y as number) : undefined;
  const magnitudes = magnitudesOf(x, y);
  const inside = found.inside === undefined ? undefined : found.inside / found.n;
  return [
    ...presence(sample),
    row(sample, found, 'centroid_x', found.x),
    row(sample, found, 'centroid_y', found.y),
    row(sample, found, 'centroid_magnitude', magnitude),
    row(sample, found, 'centroid_axis', Number.isNaN(axis) ? undefined : axis, {
      unit: 'deg',
      ...(magnitude === 0 ? { note: 'not-estimable:zero-vector' } : {}),
    }),
    row(sample, found, 'sd_x', found.sdX),
    row(sample, found, 'sd_y', found.sdY),
    row(sample, found, 'covariance_xy', found.covariance, { unit: 'D²' }),
    estimateRow(sample, 'mean_magnitude', meanInterval(magnitudes, sample.patients, sample.confidence)),
    ...magnitudeRows(sample, magnitudes),
    ...ellipseRows(sample, found, 'data_ellipse', found.eyesRegion),
    row(sample, found, 'share_inside_data_ellipse', inside, { unit: 'share' }),
    row(sample, found, 'count_inside_data_ellipse', found.inside, { unit: 'eyes', method: 'count' }),
    ...ellipseRows(sample, found, 'centroid_ellipse', found.region),
    row(sample, found, 'hotelling_t2', found.test?.t2, { unit: '' }),
    row(sample, found, 'p', found.test?.p, { unit: '' }),
  ];
}
