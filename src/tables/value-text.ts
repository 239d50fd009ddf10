import { axisText } from '../format/axis.js';
import { interval } from '../format/interval.js';
import { count, fixed, numberStyles } from '../format/number.js';
import { pValue } from '../format/p-value.js';
import { percent } from '../format/percent.js';
import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';

/** Decimals of published numbers by unit; 2 where none is given. Axes and days are whole. */
const decimals: Readonly<Record<string, number>> = {
  years: 1,
  months: 1,
  days: 0,
  min: 1,
  s: 0,
  '%': 1,
  'cells/mm²': 0,
  deg: 0,
  'D²': 3,
};

const ofEyes = 'n|missing|count|count_.*|substituted|due|not_yet_due|early_eyes|operated|analysed|eyes_needed.*';
const counts = new RegExp(`^(?:${ofEyes}|patients_.*|overlap_.*|months|years)$`);
const pValues = /^p(_adjusted|_textbook)?(:|$)/;

/** Whether a row holds a share, shown in percent. */
function isShare(row: ResultRow): boolean {
  return /^(share(_|$)|overlap:|if_missing_(failed|succeeded):)/.test(row.statistic);
}

/** Whether a row holds a difference of shares, or a distance between them, shown in percentage points. */
function isPoints(row: ResultRow): boolean {
  return row.unit === 'share' && !isShare(row);
}

/**
 * The value of a results row as published: decimals by unit and statistic, true minus sign, shares in percent without
 * the sign and their differences in percentage points.
 *
 * @returns 'not estimable' where there is no value; the row's note says why
 * @example valueText(results.get('prediction_error', 'all', 'mean'), words) // '−0.06'
 */
export function valueText(row: ResultRow, words: Words): string {
  const { value, statistic } = row;
  if (row.note === 'suppressed') return words.tables.notShown;
  if (value === undefined) return words.tables.notEstimable;
  if (isShare(row)) return percent(value, row.n);
  if (pValues.test(statistic)) return pValue(value);
  if (/^(centroid|difference)_axis$/.test(statistic)) return axisText(value, 3);
  return isCount(row) ? count(value) : numberText(value, row);
}

/**
 * The limits of a results row, with the decimals of its value.
 *
 * @returns undefined where the row has no interval
 * @example intervalText(results.get('prediction_error', 'all', 'mean'), words) // '−0.10 to −0.01'
 */
export function intervalText(row: ResultRow, words: Words): string | undefined {
  const { ci_low: low, ci_high: high } = row;
  if (low === undefined || high === undefined) return undefined;
  const { to } = words.tables;
  if (isShare(row)) return `${percent(low, row.n)} ${to} ${percent(high, row.n)}`;
  const scale = isPoints(row) ? 100 : 1;
  return interval(scale * low, scale * high, decimalsOf(row), numberStyles.typesetPoint, to);
}

function numberText(value: number, row: ResultRow): string {
  return fixed(isPoints(row) ? 100 * value : value, decimalsOf(row));
}

function isCount(row: ResultRow): boolean {
  return counts.test(row.statistic) || row.measure.startsWith('flow:');
}

/** Percentage points have the decimals of the percentages; degrees of freedom one. */
function decimalsOf(row: ResultRow): number {
  if (isPoints(row)) return row.n < 100 ? 0 : 1;
  return row.statistic.startsWith('df:') ? 1 : (decimals[row.unit] ?? 2);
}
