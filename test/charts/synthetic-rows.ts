import { errorBins, errorLimits } from '../../src/measures/profiles.js';
import type { ResultRow } from '../../src/records/result.js';

/**
 * One eye of an invented audit: results rows and points are made from it, so that charts are tested without the stages
 * before them. The statistics are the plainest that look right (every eye a patient, textbook intervals); what charts
 * do with them is tested, not they.
 */
export interface InventedEye {
  cohort: number;
  error: number;
  before: readonly [x: number, y: number];
  after: readonly [x: number, y: number];
  cdvaBefore: number;
  udva: number;
  cdva: number;
  days: number;
}

export type Row = Pick<ResultRow, 'statistic' | 'value'> & Partial<ResultRow>;

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : sum(values) / values.length;

function sd(values: readonly number[]): number | undefined {
  const middle = mean(values);
  if (middle === undefined || values.length < 2) return undefined;
  return Math.sqrt(sum(values.map((value) => (value - middle) ** 2)) / (values.length - 1));
}

function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  return mean(sorted.slice(Math.floor((sorted.length - 1) / 2), Math.floor(sorted.length / 2) + 1));
}

/** Wilson's interval; none below 5 eyes, as in the audit. */
export function share(statistic: string, eyes: number, n: number): readonly Row[] {
  const counted = { statistic: statistic.replace('share', 'count'), value: eyes };
  if (n === 0) return [{ statistic, value: undefined, note: 'not-estimable:no-eyes', unit: 'share' }, counted];
  const [z, p] = [1.959963984540054, eyes / n];
  const centre = (p + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half = (z / (1 + (z * z) / n)) * Math.sqrt((p * (1 - p)) / n + (z * z) / (4 * n * n));
  const limits =
    n < 5
      ? { note: 'not-estimable:few-patients' }
      : { ci_low: Math.max(0, centre - half), ci_high: Math.min(1, centre + half) };
  return [{ statistic, value: p, ...limits, unit: 'share', method: 'wilson-effective-n' }, counted];
}

export function summary(values: readonly number[]): readonly Row[] {
  const least = values.length === 0 ? undefined : Math.min(...values);
  const greatest = values.length === 0 ? undefined : Math.max(...values);
  return [
    { statistic: 'n', value: values.length },
    { statistic: 'missing', value: 0 },
    { statistic: 'mean', value: mean(values) },
    { statistic: 'sd', value: sd(values) },
    { statistic: 'median', value: median(values) },
    { statistic: 'min', value: least },
    { statistic: 'max', value: greatest },
  ];
}

/** What an error gives: a summary, shares within limits, and a histogram. */
export function errorRows(
  errors: readonly number[],
  inner: readonly number[] = errorBins,
  limits: readonly number[] = errorLimits,
): readonly Row[] {
  const edges = [-Infinity, ...inner, Infinity];
  const name = (edge: number): string => (Number.isFinite(edge) ? String(edge) : edge < 0 ? '-inf' : 'inf');
  const bins = edges.slice(1).map((to, i) => {
    const from = edges[i] as number;
    const inside = (value: number): boolean => value > from && value <= to;
    return { statistic: `count_from_${name(from)}_to_${name(to)}`, value: errors.filter(inside).length };
  });
  const within = (limit: number): number => errors.filter((error) => Math.abs(error) <= limit).length;
  const shares = limits.flatMap((limit) => share(`share_within_${limit.toFixed(2)}`, within(limit), errors.length));
  return [...summary(errors), ...shares, ...bins];
}

/** Semi-axes and plot angle of the ellipse k·S (standards.md 2, Johnson & Wichern ch. 5). */
function ellipse(name: string, sxx: number, syy: number, sxy: number, k: number): readonly Row[] {
  const [half, root] = [(sxx + syy) / 2, Math.hypot((sxx - syy) / 2, sxy)];
  return [
    { statistic: `${name}_major`, value: Math.sqrt(k * (half + root)) },
    { statistic: `${name}_minor`, value: Math.sqrt(Math.max(0, k * (half - root))) },
    { statistic: `${name}_angle`, value: (Math.atan2(2 * sxy, sxx - syy) * 90) / Math.PI },
  ];
}

const none = (name: string): readonly Row[] =>
  ['major', 'minor', 'angle'].map((part) => {
    return { statistic: `${name}_${part}`, value: undefined, note: 'not-estimable:few-patients' };
  });

export function vectorRows(vectors: readonly (readonly [x: number, y: number])[]): readonly Row[] {
  const n = vectors.length;
  const [xs, ys] = [vectors.map(([x]) => x), vectors.map(([, y]) => y)];
  const [mx, my] = [mean(xs), mean(ys)];
  const magnitude = mx === undefined || my === undefined ? undefined : Math.hypot(mx, my);
  const axis = magnitude ? ((Math.atan2(my as number, mx as number) * 90) / Math.PI + 180) % 180 || 180 : undefined;
  const [sx, sy] = [sd(xs) ?? 0, sd(ys) ?? 0];
  const sxy = n < 2 ? 0 : sum(vectors.map(([x, y]) => (x - (mx as number)) * (y - (my as number)))) / (n - 1);
  const f = ((n - 2) / 2) * (0.05 ** (-2 / (n - 2)) - 1);
  const few = n < 5;
  const k = (2 * (n - 1) * f) / (n - 2);
  return [
    { statistic: 'n', value: n },
    { statistic: 'missing', value: 0 },
    { statistic: 'centroid_x', value: mx },
    { statistic: 'centroid_y', value: my },
    { statistic: 'centroid_magnitude', value: magnitude },
    { statistic: 'centroid_axis', value: axis, unit: 'deg' },
    ...(few ? none('data_ellipse') : ellipse('data_ellipse', sx * sx, sy * sy, sxy, k * (1 + 1 / n))),
    ...(few
      ? [{ statistic: 'share_inside_data_ellipse', value: undefined, unit: 'share' }]
      : [{ statistic: 'share_inside_data_ellipse', value: 0.94, unit: 'share' }]),
    ...(few ? none('centroid_ellipse') : ellipse('centroid_ellipse', sx * sx, sy * sy, sxy, k / n)),
  ];
}

/** A whole row: what is left out follows from the eyes of its group, each one of a patient. */
export function resultOf(row: Row, measure: string, group: string, eyes: number): ResultRow {
  const base = { ci_low: undefined, ci_high: undefined, n: eyes, eyes, patients: eyes };
  return { measure, group, ...base, unit: 'D', method: '', note: '', ...row };
}
