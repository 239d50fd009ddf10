import { categoryColumn } from '../../src/columns/category-column.js';
import { angleBins } from '../../src/measures/profiles.js';
import type { Points } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { straightLine } from '../../src/statistics/smooth.js';
import { errorRows, type InventedEye, type Row, resultOf, vectorRows } from './synthetic-rows.js';

type Vector = readonly [x: number, y: number];

/** What astigmatism charts show of one invented eye; follows from the eye, so that zero stays zero and alike alike. */
export interface InventedAstigmatism {
  isRight: boolean;
  cornealAfter: Vector;
  induced: Vector;
  inFrame: Vector;
  predicted: Vector;
  error: Vector;
  /** Magnitudes in planes of their own, D, and an angle, degrees. */
  cylinderBefore: number;
  cylinderRecorded: number;
  angle: number;
  target: number;
  achieved: number;
  rotation: number;
  misalignment: number;
}

const difference = ([ax, ay]: Vector, [bx, by]: Vector): Vector => [ax - bx, ay - by];

export function astigmatismOf({ before, after }: InventedEye, index: number): InventedAstigmatism {
  const induced: Vector = [0.35 * after[0] - 0.15 * before[1], 0.3 * after[1] + 0.1 * before[0]];
  const predicted: Vector = [0.2 * before[0], 0.15 * before[1]];
  return {
    isRight: Math.floor(index / 5) % 2 === 0,
    cornealAfter: [before[0] + induced[0], before[1] + induced[1]],
    induced,
    inFrame: [induced[1] - 0.2 * Math.hypot(...before), induced[0]],
    predicted,
    error: difference(after, predicted),
    cylinderBefore: Math.hypot(...before),
    cylinderRecorded: 1.04 * Math.hypot(...after),
    angle: 25 * after[0] - 18 * after[1],
    target: Math.hypot(...before),
    achieved: Math.abs(Math.hypot(...before) + 0.6 * after[0]),
    rotation: 7 * after[1] + 2 * before[0],
    misalignment: 7 * after[1] - 3 * before[1],
  };
}

/** The same of an angle: shares stay shares. */
const inDegrees = (rows: readonly Row[]): readonly Row[] => rows.map((row) => ({ unit: 'deg', ...row }));

/** A turn of the lens, and of how many eyes the cylinder left is known too. */
const turned = (turns: readonly number[]): readonly Row[] => [
  ...inDegrees(errorRows(turns, angleBins, [5, 10])),
  { statistic: 'count_with_cylinder_after', value: turns.length },
];

/** The line of achieved on aimed, where eyes differ. */
function lineOf(eyes: readonly InventedAstigmatism[]): readonly Row[] {
  const [x, y] = [Float64Array.from(eyes, ({ target }) => target), Float64Array.from(eyes, (eye) => eye.achieved)];
  const line = straightLine(x, y, Int32Array.from(x.keys()));
  if (!line) return [];
  const { value, low, high } = line.slope(0.95);
  const bounded = { value, ci_low: low, ci_high: high, unit: '' };
  const squared =
    line.rSquared === undefined ? [] : [{ statistic: 'r_squared_on_target_induced', value: line.rSquared }];
  return [
    { statistic: 'slope_on_target_induced', ...bounded },
    { statistic: 'intercept_on_target_induced', value: line.at(0, 0.95).value },
    ...squared,
  ];
}

/** What one group of eyes gives, by measure. */
export function astigmatismRows(eyes: readonly InventedAstigmatism[]): Readonly<Record<string, readonly Row[]>> {
  const of = (vector: (eye: InventedAstigmatism) => Vector): readonly Row[] => vectorRows(eyes.map(vector));
  const achieved = of(({ predicted, error }) => [predicted[0] + error[0], predicted[1] + error[1]]);
  return {
    corneal_cylinder_after: of(({ cornealAfter }) => cornealAfter),
    induced_in_incision_frame: of(({ inFrame }) => inFrame),
    cylinder_prediction_error: of(({ error }) => error),
    'cylinder_prediction_error:toric': of(({ error }) => error),
    split_predicted: of(({ predicted }) => predicted),
    split_residual: achieved,
    corneal_cylinder_magnitude_before: errorRows(eyes.map(({ cylinderBefore }) => cylinderBefore)),
    refractive_cylinder_after_recorded: errorRows(eyes.map(({ cylinderRecorded }) => cylinderRecorded)),
    surgically_induced: [{ statistic: 'n', value: eyes.length }, { statistic: 'missing', value: 0 }, ...lineOf(eyes)],
    lens_rotation: turned(eyes.map(({ rotation }) => rotation)),
    lens_misalignment: turned(eyes.map(({ misalignment }) => misalignment)),
    angle_of_error: inDegrees(
      errorRows(
        eyes.map(({ angle }) => angle),
        angleBins,
        [5, 10, 15],
      ),
    ),
  };
}

const indexed = (eyes: readonly InventedEye[]) =>
  eyes.map((eye, index) => ({ index, cohort: eye.cohort, own: astigmatismOf(eye, index), eye }));

/** Rows of what is given for right and left eyes apart; none where a group has no such eye, as in the audit. */
export function eyeStrata(eyes: readonly InventedEye[], cohorts: readonly string[]): readonly ResultRow[] {
  const groups = [
    { pair: [] as readonly string[], code: -1 },
    ...cohorts.map((name, code) => ({ pair: [groupPair('technique', name)], code })),
  ];
  return groups.flatMap(({ pair, code }) =>
    ['right', 'left'].flatMap((side) => {
      const own = indexed(eyes)
        .filter(({ cohort }) => code < 0 || cohort === code)
        .filter((eye) => eye.own.isRight === (side === 'right'))
        .map((eye) => eye.own.induced);
      const group = [`eye=${side}`, ...pair].join(';');
      const rows = own.length === 0 ? [] : vectorRows(own);
      return rows.map((row) => resultOf(row, 'induced_corneal_cylinder', group, own.length));
    }),
  );
}

/** Marks of the astigmatism figures behind the first. */
export function inventedAstigmatismPoints(eyes: readonly InventedEye[], cohorts: readonly string[]): readonly Points[] {
  const all = indexed(eyes);
  const panel = (name: string, of: (eye: (typeof all)[number]) => Vector, holds = (_: InventedAstigmatism) => true) => {
    return { name, marks: all.filter(({ own }) => holds(own)).map((eye) => ({ ...eye, at: of(eye) })) };
  };
  const figure = (id: string, panels: readonly ReturnType<typeof panel>[]): Points => {
    const marks = panels.flatMap(({ marks }, i) => marks.map((mark) => ({ ...mark, panel: i + 1 })));
    return {
      figure: id,
      panel: categoryColumn(
        ['', ...panels.map(({ name }) => name)],
        Uint8Array.from(marks, (mark) => mark.panel),
      ),
      cohort: categoryColumn(
        ['', ...cohorts],
        Uint8Array.from(marks, ({ cohort }) => (cohorts.length > 0 ? cohort + 1 : 0)),
      ),
      x: Float64Array.from(marks, ({ at }) => at[0]),
      y: Float64Array.from(marks, ({ at }) => at[1]),
      eye: Int32Array.from(marks, ({ index }) => index),
    };
  };
  return [
    figure('double-angle-cornea', [
      panel('corneal_cylinder_before', ({ eye }) => eye.before),
      panel('corneal_cylinder_after', ({ own }) => own.cornealAfter),
    ]),
    figure('double-angle-induced', [
      panel(
        'induced_right',
        ({ own }) => own.induced,
        ({ isRight }) => isRight,
      ),
      panel(
        'induced_left',
        ({ own }) => own.induced,
        ({ isRight }) => !isRight,
      ),
    ]),
    figure('induced-incision', [panel('induced_in_incision_frame', ({ own }) => own.inFrame)]),
    figure('double-angle-error', [panel('cylinder_prediction_error', ({ own }) => own.error)]),
    figure('double-angle-toric', [
      panel('split_predicted', ({ own }) => own.predicted),
      panel('split_residual', ({ eye }) => eye.after),
    ]),
    figure('target-induced', [panel('target-induced', ({ own }) => [own.target, own.achieved])]),
    figure('toric-rotation', [
      panel('lens_rotation', ({ own, eye }) => [own.rotation, Math.hypot(...eye.after)]),
      panel('lens_misalignment', ({ own, eye }) => [own.misalignment, Math.hypot(...eye.after)]),
    ]),
  ];
}
