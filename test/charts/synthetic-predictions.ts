import { categoryColumn } from '../../src/columns/category-column.js';
import { trendFields, trendName } from '../../src/predictions/trends.js';
import type { Points } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { smoothOf, straightLine } from '../../src/statistics/smooth.js';
import { lots } from './synthetic.js';
import type { InventedEye, Row } from './synthetic-rows.js';

/** What the two figures of predictions show of an invented eye. */
interface Before {
  axialLength: number;
  k: number;
  planned: number;
}

const errors = ['prediction_error', 'prediction_error:Haigis'] as const;

/** Length, cornea and planned change of every eye; alike for eyes that are alike. */
function beforeOf(eyes: readonly InventedEye[], alike: boolean): readonly Before[] {
  const lot = lots(5);
  return eyes.map(() => {
    if (alike) return { axialLength: 23.5, k: 43.5, planned: 0 };
    return { axialLength: 21 + 7 * lot() ** 2, k: 40 + 7 * lot(), planned: -8 + 14 * lot() };
  });
}

function fitted(x: Float64Array, y: Float64Array, curve: boolean): readonly Row[] {
  const patients = Int32Array.from(x.keys());
  const line = straightLine(x, y, patients);
  const smooth = smoothOf(x, y, patients);
  const counts: readonly Row[] = [
    { statistic: 'n', value: x.length },
    { statistic: 'missing', value: 0 },
  ];
  if (!line || !smooth) return counts;
  const estimated = (statistic: string, { value, low, high }: ReturnType<typeof line.slope>): Row => {
    return { statistic, value, ci_low: low, ci_high: high };
  };
  const [low, high] = [Math.min(...x), Math.max(...x)];
  const places = curve ? [0, 0.25, 0.5, 0.75, 1].map((part) => low + part * (high - low)) : [];
  return [
    ...counts,
    estimated('slope', line.slope(0.95)),
    estimated('intercept', line.at(0, 0.95)),
    ...(line.rSquared === undefined ? [] : [{ statistic: 'r_squared', value: line.rSquared }]),
    ...places.map((place) => estimated(`smooth_at_${place.toFixed(4)}`, smooth.at(place, 0.95))),
  ];
}

/** Rows and marks of the figures of predictions, for invented eyes; `alike`: all of one length and cornea. */
export function inventedPredictions(
  eyes: readonly InventedEye[],
  cohorts: readonly string[] = [],
  alike = false,
): { rows: readonly ResultRow[]; points: readonly Points[] } {
  const before = beforeOf(eyes, alike);
  const values = (of: (eye: InventedEye, before: Before) => number, own = eyes) =>
    Float64Array.from(own, (eye) => of(eye, before[eyes.indexOf(eye)] as Before));
  const planned = values((_, { planned: change }) => change);
  const achieved = values((eye, { planned: change }) => change + eye.error);
  const across = { axial_length: values((_, { axialLength }) => axialLength), k_mean: values((_, { k }) => k) };
  const error = values((eye) => eye.error);
  const rowsOf = (measure: string, group: string, rows: readonly Row[], n: number): readonly ResultRow[] =>
    rows.map((row) => {
      const base = { ci_low: undefined, ci_high: undefined, n, eyes: n, patients: n, unit: '', method: '', note: '' };
      return { measure, group, ...base, ...row };
    });
  const groups = [
    { group: 'all', holds: () => true },
    ...cohorts.map((name, i) => ({ group: `technique=${name}`, holds: (eye: number) => eyes[eye]?.cohort === i })),
  ];
  const codes = (times: number) =>
    Uint8Array.from({ length: times * eyes.length }, (_, i) => {
      return cohorts.length > 0 ? (eyes[i % eyes.length] as InventedEye).cohort + 1 : 0;
    });
  const marks = (figure: string, panels: readonly { name: string; x: Float64Array; y: Float64Array }[]): Points => ({
    figure,
    panel: categoryColumn(
      ['', ...panels.map(({ name }) => name)],
      Uint8Array.from({ length: panels.length * eyes.length }, (_, i) => 1 + Math.floor(i / eyes.length)),
    ),
    cohort: categoryColumn(['', ...cohorts], codes(panels.length)),
    x: Float64Array.from(panels.flatMap(({ x }) => [...x])),
    y: Float64Array.from(panels.flatMap(({ y }) => [...y])),
    eye: Int32Array.from({ length: panels.length * eyes.length }, (_, i) => i % eyes.length),
  });
  const trends = errors.flatMap((name) =>
    trendFields.map((field) => ({ name: trendName(field, name), x: across[field.field], y: error })),
  );
  return {
    rows: [
      ...groups.flatMap(({ group, holds }) => {
        const [x, y] = [planned, achieved].map((column) => column.filter((_, eye) => holds(eye)));
        return rowsOf('achieved_change', group, fitted(x as Float64Array, y as Float64Array, false), x?.length ?? 0);
      }),
      ...trends.flatMap(({ name, x, y }) => rowsOf(name, 'all', fitted(x, y, true), x.length)),
    ],
    points: [marks('planned-achieved', [{ name: 'changes', x: planned, y: achieved }]), marks('error-trend', trends)],
  };
}
