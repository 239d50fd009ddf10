import { denominatorOfLogMAR } from '../acuity/log-mar.js';
import { count, fixed } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import { noteCodes } from './marks.js';
import type { Asked, ShownCell } from './shapes.js';
import { intervalText, valueText } from './value-text.js';

/** One number without its interval. */
export function valueCell(row: ResultRow, words: Words): ShownCell {
  return { text: valueText(row, words), rows: [row] };
}

/** An estimate: '−0.06 (−0.10 to −0.01)'; without an interval the value alone, its note says why. */
export function estimateCell(row: ResultRow, words: Words): ShownCell {
  const limits = intervalText(row, words);
  const value = valueText(row, words);
  return { text: limits === undefined ? value : `${value} (${limits})`, rows: [row] };
}

/** Eyes with the value, those without in brackets: '371 (3)'. */
export function eyesCell(get: Asked, words: Words): ShownCell {
  const [n, missing] = [get('n'), get('missing')];
  return { text: `${valueText(n, words)} (${valueText(missing, words)})`, rows: [n, missing] };
}

/**
 * A share: numerator over denominator, percent, interval. Never a percentage without its n, nor without its interval:
 * 2 of 2 would be 100 %.
 *
 * @example shareCell(get('share_within_0.50'), get('count_within_0.50'), words).text // '287/371, 77.4 (72.3 to 81.7)'
 */
export function shareCell(share: ResultRow, numerator: ResultRow, words: Words): ShownCell {
  if (share.value === undefined) return valueCell(share, words);
  const fraction = `${valueText(numerator, words)}/${count(share.n)}`;
  const text = share.ci_low === undefined ? fraction : `${fraction}, ${estimateCell(share, words).text}`;
  return { text, rows: [share, numerator] };
}

/** Patients behind a count of eyes. */
export function patientsCell(row: ResultRow): ShownCell {
  return { text: count(row.patients), rows: [row] };
}

/** A share that describes the eyes at hand and has no interval: '349/371, 94.1'; of all or none without a percentage. */
export function describedShareCell(share: ResultRow, numerator: ResultRow, words: Words): ShownCell {
  if (share.value === undefined) return valueCell(share, words);
  const fraction = `${valueText(numerator, words)}/${count(share.n)}`;
  const isWhole = share.value === 0 || share.value === 1;
  return { text: isWhole ? fraction : `${fraction}, ${valueText(share, words)}`, rows: [share, numerator] };
}

/** Least and greatest value: '−1.12 to 0.87'. */
export function rangeCell(get: Asked, words: Words): ShownCell {
  return { text: rangeText(get, words), rows: [get('min'), get('max')] };
}

/** '71.3 (8.2)': description, without intervals. */
export function meanSdCell(get: Asked, words: Words): ShownCell {
  const [mean, sd] = [withoutInterval(get('mean')), withoutInterval(get('sd'))];
  if (mean.value === undefined) return valueCell(mean, words);
  return { text: `${valueText(mean, words)} (${valueText(sd, words)})`, rows: [mean, sd] };
}

/** '72.0 (48.0 to 90.0)': description, without intervals. */
export function medianRangeCell(get: Asked, words: Words): ShownCell {
  const median = withoutInterval(get('median'));
  if (median.value === undefined) return valueCell(median, words);
  return { text: `${valueText(median, words)} (${rangeText(get, words)})`, rows: [median, get('min'), get('max')] };
}

/** '4.1 (1.2 to 8.0)': median between the quartiles, description without intervals. */
export function quartilesCell(get: Asked, words: Words): ShownCell {
  const [median, low, high] = [withoutInterval(get('median')), get('q25'), get('q75')];
  if (median.value === undefined) return valueCell(median, words);
  const quartiles = `${valueText(low, words)} ${words.tables.to} ${valueText(high, words)}`;
  return { text: `${valueText(median, words)} (${quartiles})`, rows: [median, low, high] };
}

/** A vector as its magnitude at its steep meridian: '0.43 @ 092'; its region stands in a row of its own. */
export function vectorCell(get: Asked, words: Words): ShownCell {
  const [magnitude, axis] = [withoutInterval(get('centroid_magnitude')), withoutInterval(get('centroid_axis'))];
  if (magnitude.value === undefined) return valueCell(magnitude, words);
  const meridian = axis.value === undefined ? '' : ` @ ${valueText(axis, words)}`;
  return { text: `${valueText(magnitude, words)}${meridian}`, rows: [magnitude, axis] };
}

/** Semi-axes of an ellipse: '0.45 × 0.23'. */
export function ellipseCell(get: Asked, region: 'centroid_ellipse' | 'data_ellipse', words: Words): ShownCell {
  const [major, minor] = [get(`${region}_major`), get(`${region}_minor`)];
  if (major.value === undefined) return valueCell(major, words);
  return { text: `${valueText(major, words)} × ${valueText(minor, words)}`, rows: [major, minor] };
}

/** The fraction that a mean logMAR stands for, in feet and metres: '20/23 (6/7.0)'. */
export function snellenCell(mean: ResultRow, words: Words): ShownCell {
  if (mean.value === undefined) return valueCell(mean, words);
  const feet = fixed(denominatorOfLogMAR(mean.value, 20), 0);
  const metres = fixed(denominatorOfLogMAR(mean.value, 6), 1);
  return { text: `20/${feet} (6/${metres})`, rows: [withoutInterval(mean)] };
}

/** A row of which only the value is shown: footnotes must not tell of an interval that is not there. */
export function withoutInterval(row: ResultRow): ResultRow {
  if (row.value === undefined) return row;
  const note = noteCodes(row).includes('few-patients') ? 'few-patients' : '';
  return { ...row, ci_low: undefined, ci_high: undefined, method: '', note };
}

function rangeText(get: Asked, words: Words): string {
  const [low, high] = [get('min'), get('max')];
  if (low.value === undefined) return valueText(low, words);
  return `${valueText(low, words)} ${words.tables.to} ${valueText(high, words)}`;
}
