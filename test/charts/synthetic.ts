import { categoryColumn } from '../../src/columns/category-column.js';
import { acuityLines } from '../../src/measures/profiles.js';
import type { Plan } from '../../src/records/plan.js';
import type { Points } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { astigmatismOf, astigmatismRows, eyeStrata, inventedAstigmatismPoints } from './synthetic-astigmatism.js';
import { inventedComparison } from './synthetic-comparison.js';
import { errorRows, type InventedEye, type Row, resultOf, share, sum, summary, vectorRows } from './synthetic-rows.js';

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

function acuityRows(values: readonly number[]): readonly Row[] {
  const reached = (line: string): number =>
    values.filter((value) => value <= Math.round(10 * Math.log10(Number(line.slice(3)) / 20)) / 10 + 0.005).length;
  return [
    ...summary(values),
    ...acuityLines.flatMap((line) => share(`share_at_or_better_${line}`, reached(line), values.length)),
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
    provenance: [{ statistic: 'axis_missing', value: 3, n: 3 }],
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
    ...astigmatismRows(eyes.map(astigmatismOf)),
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
      rows.map((row) => resultOf(row, measure, group, own.length)),
    ),
  );
  return [...rows, ...eyeStrata(eyes, cohorts), ...inventedComparison(eyes, cohorts)];
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
    ...inventedAstigmatismPoints(eyes, cohorts),
  ];
}

/** The parts of a plan that charts look at. */
export function inventedPlan(outputs: Partial<Plan['outputs']> = {}, outcome: readonly string[] = ['1 month']): Plan {
  const plan = {
    follow_up: { outcome },
    cohorts: { by: 'technique', define: [], reference: undefined, compare: [] },
    statistics: { confidence: 0.95, margins: {}, differences: {}, adjust_for: [] },
    outputs: {
      artwork: 'journal-single',
      profiles: {},
      panels: [],
      small_cells: 0,
      order: [],
      leave_out: [],
      ...outputs,
    },
  };
  return plan as unknown as Plan;
}
