import { categoryColumn } from '../../src/columns/category-column.js';
import { acuityLines, errorBins, errorLimits } from '../../src/measures/profiles.js';
import type { Plan } from '../../src/records/plan.js';
import type { Points } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { inventedComparison } from './synthetic-comparison.js';

/**
 * Results rows and points of an invented audit, so that charts are tested without the stages before them. The
 * statistics are the plainest that look right (every eye a patient, textbook intervals); what charts do with them is
 * tested, not they.
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

/** Numbers in [0, 1) that look random and are the same in every run (Park and Miller's generator). */
export function lots(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const normal = (lot: () => number): number => Math.sqrt(-2 * Math.log(1 - lot())) * Math.cos(2 * Math.PI * lot());

/** Eyes as an audit might find them: `eyes` in each of `cohorts`. */
export function inventedEyes(eyes: number, cohorts = 1, seed = 11): readonly InventedEye[] {
  const lot = lots(seed);
  const quarter = (value: number): number => Math.round(value * 4) / 4;
  return Array.from({ length: eyes * cohorts }, (_, i) => {
    const cohort = i % cohorts;
    const spread = 1 + 0.25 * cohort;
    const cylinder = quarter(Math.abs(normal(lot)) * 0.55);
    const axis = (Math.round(lot() * 36) * Math.PI) / 18;
    const cdva = Math.max(-0.1, 0.02 + 0.09 * normal(lot));
    return {
      cohort,
      error: -0.05 + 0.42 * spread * normal(lot),
      before: [-0.35 + 0.8 * normal(lot), 0.05 + 0.55 * normal(lot)],
      after: [cylinder * Math.cos(axis), cylinder * Math.sin(axis)],
      cdvaBefore: Math.max(0, 0.38 + 0.24 * normal(lot)),
      udva: cdva + 0.06 + 0.12 * spread * Math.abs(normal(lot)),
      cdva,
      days: Math.round(36 + 8 * normal(lot)),
    };
  });
}

type Row = Pick<ResultRow, 'statistic' | 'value'> & Partial<ResultRow>;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
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
function share(statistic: string, eyes: number, n: number): readonly Row[] {
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

function summary(values: readonly number[]): readonly Row[] {
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

function errorRows(errors: readonly number[]): readonly Row[] {
  const edges = [-Infinity, ...errorBins, Infinity];
  const name = (edge: number): string => (Number.isFinite(edge) ? String(edge) : edge < 0 ? '-inf' : 'inf');
  const bins = edges.slice(1).map((to, i) => {
    const from = edges[i] as number;
    const inside = (value: number): boolean => value > from && value <= to;
    return { statistic: `count_from_${name(from)}_to_${name(to)}`, value: errors.filter(inside).length };
  });
  const within = (limit: number): number => errors.filter((error) => Math.abs(error) <= limit).length;
  const shares = errorLimits.flatMap((limit) =>
    share(`share_within_${limit.toFixed(2)}`, within(limit), errors.length),
  );
  return [...summary(errors), ...shares, ...bins];
}

function acuityRows(values: readonly number[]): readonly Row[] {
  const reached = (line: string): number =>
    values.filter((value) => value <= Math.round(10 * Math.log10(Number(line.slice(3)) / 20)) / 10 + 0.005).length;
  return [
    ...summary(values),
    ...acuityLines.flatMap((line) => share(`share_at_or_better_${line}`, reached(line), values.length)),
  ];
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

function vectorRows(vectors: readonly (readonly [x: number, y: number])[]): readonly Row[] {
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

const flowSteps = [
  'excluded:Axial length over 30 mm',
  'one_eye_rule',
  'not_yet_due',
  'no_visit',
  'not_recorded',
  'set_aside',
  'no_prediction',
];

/** `lost[i]` eyes leave at the i-th reason. */
function flowRows(analysed: number, lost: readonly number[]): readonly Row[] {
  return [
    { statistic: 'operated', value: analysed + sum(lost) },
    ...flowSteps.map((statistic, i) => ({ statistic, value: lost[i] ?? 0 })),
    { statistic: 'analysed', value: analysed },
  ];
}

/** What one group of eyes gives, by measure. */
function groupRows(eyes: readonly InventedEye[]): Readonly<Record<string, readonly Row[]>> {
  const n = eyes.length;
  const lost = n < 10 ? [] : [2, 0, 12, 21, 9, 2, 4];
  const of = (value: (eye: InventedEye) => number): number[] => eyes.map(value);
  const errors = errorRows(of(({ error }) => error));
  const flow = flowRows(n, lost);
  return {
    eyes_operated: [{ statistic: 'count', value: n + sum(lost), patients: n + sum(lost) }],
    'flow:eligible': flowRows(n + sum(lost.slice(2)), lost.slice(0, 2)),
    'flow:refraction': flow,
    'flow:astigmatism': flow.filter(({ statistic }) => statistic !== 'no_prediction'),
    'flow:corrected': flow,
    'flow:uncorrected': flow,
    completeness: [{ statistic: 'due', value: n + sum(lost.slice(3)) }],
    follow_up_days: summary(of(({ days }) => days)).map((row) => ({ ...row, unit: 'days' })),
    'follow_up_days:astigmatism': summary(of(({ days }) => days)).map((row) => ({ ...row, unit: 'days' })),
    'follow_up_days:corrected': summary(of(({ days }) => days)).map((row) => ({ ...row, unit: 'days' })),
    'follow_up_days:uncorrected': summary(of(({ days }) => days)).map((row) => ({ ...row, unit: 'days' })),
    cdva_before: acuityRows(of(({ cdvaBefore }) => cdvaBefore)),
    prediction_error: errors,
    target_error: errors,
    corneal_cylinder_before: vectorRows(eyes.map(({ before }) => before)),
    refractive_cylinder_after: vectorRows(eyes.map(({ after }) => after)),
    cdva: acuityRows(of(({ cdva }) => cdva)),
    udva: acuityRows(of(({ udva }) => udva)),
  };
}

/** Results rows of all eyes and, where there are two or more, of each cohort. */
export function inventedRows(eyes: readonly InventedEye[], cohorts: readonly string[] = []): readonly ResultRow[] {
  const groups = [
    { group: 'all', own: eyes },
    ...cohorts.map((name, i) => ({
      group: groupPair('technique', name),
      own: eyes.filter(({ cohort }) => cohort === i),
    })),
  ];
  const rows = groups.flatMap(({ group, own }) =>
    Object.entries(groupRows(own)).flatMap(([measure, rows]) =>
      rows.map((row) => {
        const base = { ci_low: undefined, ci_high: undefined, n: own.length, eyes: own.length, patients: own.length };
        return { measure, group, ...base, unit: 'D', method: '', note: '', ...row };
      }),
    ),
  );
  return [...rows, ...inventedComparison(eyes, cohorts)];
}

/** Marks of the double-angle figure. */
export function inventedPoints(eyes: readonly InventedEye[], cohorts: readonly string[] = []): readonly Points[] {
  const codes = [...eyes, ...eyes].map(({ cohort }) => (cohorts.length > 0 ? cohort + 1 : 0));
  const vectors = [...eyes.map(({ before }) => before), ...eyes.map(({ after }) => after)];
  return [
    {
      figure: 'double-angle',
      panel: categoryColumn(
        ['', 'corneal_cylinder_before', 'refractive_cylinder_after'],
        Uint8Array.from(vectors, (_, i) => (i < eyes.length ? 1 : 2)),
      ),
      cohort: categoryColumn(['', ...cohorts], Uint8Array.from(codes)),
      x: Float64Array.from(vectors, ([x]) => x),
      y: Float64Array.from(vectors, ([, y]) => y),
      eye: Int32Array.from(vectors, (_, i) => i % eyes.length),
    },
  ];
}

/** The parts of a plan that charts look at. */
export function inventedPlan(outputs: Partial<Plan['outputs']> = {}, outcome: readonly string[] = ['1 month']): Plan {
  const plan = {
    follow_up: { outcome },
    cohorts: { by: 'technique', define: [], reference: undefined, compare: [] },
    statistics: { confidence: 0.95, margins: {}, differences: {}, adjust_for: [] },
    outputs: { artwork: 'journal-single', small_cells: 0, order: [], leave_out: [], ...outputs },
  };
  return plan as unknown as Plan;
}
