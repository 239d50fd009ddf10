import type { ResultRow } from '../../src/records/result.js';
import { resultKey } from '../../src/results/index.js';
import { rowsOf, type Shown } from './rows.js';

/** Groups of the made-up audit: all eyes, then its two cohorts. */
export const groups = ['all', 'technique=laser & co', 'technique=manual'] as const;
type Group = (typeof groups)[number];
type Sizes = Readonly<Record<Group, number>>;

const sizes = (all: number, laser: number, manual: number): Sizes => ({
  all,
  'technique=laser & co': laser,
  'technique=manual': manual,
});
const none = sizes(0, 0, 0);
const operated = sizes(421, 207, 214);
const patients = sizes(268, 140, 139);
const analysed = sizes(371, 184, 187);
const inEach = (of: (group: Group) => readonly ResultRow[]): readonly ResultRow[] => groups.flatMap(of);

function flow(family: string, reasons: Readonly<Record<string, Sizes>>, last: Sizes): readonly ResultRow[] {
  return inEach((group) =>
    Object.entries({ operated, ...reasons, analysed: last }).flatMap(([step, counts]) => {
      const about = { measure: `flow:${family}`, group, n: counts[group], patients: patients[group], unit: 'eyes' };
      return rowsOf(about, { [step]: counts[group] });
    }),
  );
}

const excluded = { 'excluded:Axial length over 30 mm': sizes(2, 1, 1), one_eye_rule: none };
const away = { not_yet_due: sizes(12, 6, 6), no_visit: sizes(21, 9, 12) };
const recorded = (missing: Sizes, aside: Sizes) => ({ not_recorded: missing, set_aside: aside });

const flows = [
  ...flow('safety', recorded(none, none), operated),
  ...flow('eligible', excluded, sizes(419, 206, 213)),
  ...flow(
    'refraction',
    { ...excluded, ...away, ...recorded(sizes(9, 5, 4), sizes(2, 0, 2)), no_prediction: sizes(4, 2, 2) },
    analysed,
  ),
  ...flow('astigmatism', { ...excluded, ...away, ...recorded(sizes(9, 5, 4), sizes(6, 2, 4)) }, analysed),
  ...flow('corrected', { ...excluded, ...away, ...recorded(sizes(14, 6, 8), none) }, sizes(372, 185, 187)),
  ...flow(
    'uncorrected',
    { ...excluded, near_target: sizes(30, 14, 16), ...away, ...recorded(sizes(17, 9, 8), none) },
    sizes(339, 168, 171),
  ),
];

const provenance = rowsOf(
  { measure: 'provenance', n: 421, unit: 'eyes' },
  { vertex_assumed: 40, without_target: 7, value_from_other_day: 5 },
);

const known = sizes(386, 190, 196);
const due = sizes(407, 200, 207);

const operations = inEach((group) => [
  ...rowsOf(
    { measure: 'eyes_operated', group, n: operated[group], patients: patients[group], unit: 'eyes' },
    { count: operated[group], patients_both_eyes: sizes(153, 67, 75)[group] },
  ),
  ...rowsOf(
    { measure: 'completeness', group, n: due[group], unit: 'share', method: 'exact-effective-n' },
    { share: [known[group] / due[group], 0.9222, 0.9678], count: known[group], due: due[group], not_yet_due: 12 },
  ),
]);

const days = { mean: 87.6, sd: 12.2, median: 88.5, q25: 80, q75: 96, min: 24, max: 131 };
const followUp = ['', ':astigmatism', ':corrected', ':uncorrected'].flatMap((family) =>
  inEach((group) => {
    const about = { measure: `follow_up_days${family}`, group, n: analysed[group], patients: 250, unit: 'days' };
    return rowsOf(about, { n: analysed[group], ...days });
  }),
);

const limits = ['0.25', '0.50', '0.75', '1.00', '1.50', '2.00'];

/** Three quarters of the eyes, cut to whole ones: 278 of 371, 138 of 184, 140 of 187, 67 of 90. */
function shares(prefix: string, names: readonly string[], n: number): Readonly<Record<string, Shown>> {
  const inside = Math.floor(0.75 * n);
  return Object.fromEntries(
    names.flatMap((name) => [
      [`share_${prefix}_${name}`, [inside / n, 0.7026, 0.7905]],
      [`count_${prefix}_${name}`, inside],
    ]),
  );
}

/** One signed error in one group: every statistic, with values that do not follow from one another. */
export function errorsOf(measure: string, group: string, n: number): readonly ResultRow[] {
  const about = { measure, group, n, missing: 3, patients: 250 };
  return [
    ...rowsOf(about, { n, missing: 3, q25: -0.3, q75: 0.2, min: -1.125, max: 1.995 }),
    ...rowsOf({ ...about, method: 'mean-patient-t' }, { mean: [-0.055, -0.1, -0.0051] }),
    ...rowsOf(
      { ...about, method: 'log-jackknife-t' },
      { sd: [0.4449, 0.4, 0.5], root_mean_square: [0.45, 0.405, 0.5] },
    ),
    ...rowsOf({ ...about, method: 'rank-effective-n' }, { median: [-0.004, -0.06, 0.02] }),
    ...rowsOf({ ...about, method: 'rank-effective-n' }, { median_absolute: [0.3, 0.27, 0.33] }),
    ...rowsOf({ ...about, method: 'log-patient-t' }, { mean_absolute: [0.345, 0.32, 0.375] }),
    ...rowsOf({ ...about, unit: 'share', method: 'wilson-effective-n' }, shares('within', limits, n)),
  ];
}

const errors = ['prediction_error', 'prediction_error_centred', 'target_error'].flatMap((measure) =>
  inEach((group) => errorsOf(measure, group, analysed[group])),
);

const bands = ['(-,22)', '[22,24.5)', '[24.5,26]', '(26,-)', '(missing)'].map((band) => `axial_length=${band}`);
const subgroups = ['lens_model=A1', 'lens_model=%3DSUM(1)', ...bands, 'lens_model=A1;technique=manual'].flatMap(
  (group) => errorsOf('prediction_error', group, 90),
);

function summary(measure: string, group: Group, unit: string, value: number): readonly ResultRow[] {
  const about = { measure, group, n: 416, missing: sizes(3, 2, 1)[group], patients: patients[group], unit };
  const { missing } = about;
  return rowsOf(about, { n: 416, missing, mean: value, sd: 8.25, median: value, q25: 1, q75: 2, min: 21.005, max: 90 });
}

const baseline = inEach((group) => [
  ...summary('age', group, 'years', 71.25),
  ...rowsOf(
    { measure: 'female', group, n: 250, unit: 'share', method: 'wilson-effective-n' },
    { share: [0.6, 0.5375, 0.6587], count: 150, n: 250, missing: 0 },
  ),
  ...rowsOf(
    { measure: 'toric', group, n: 0, missing: 419, unit: 'share', note: 'not-estimable:no-eyes' },
    { share: undefined, count: 0, n: 0, missing: 419 },
  ),
  ...summary('axial_length', group, 'mm', 23.505),
]);

/** Set E of the check values: ten vectors worked in R (derived values, not from this project's code). */
function vector(measure: string, group: Group): readonly ResultRow[] {
  const about = { measure, group, n: 371, patients: 250 };
  return [
    ...rowsOf(about, { n: 371, missing: 0, centroid_x: -0.4254, centroid_y: -0.036, centroid_magnitude: 0.4269 }),
    ...rowsOf({ ...about, unit: 'deg' }, { centroid_axis: 92.42, data_ellipse_angle: 169.65 }),
    ...rowsOf(about, { sd_x: 0.4411, sd_y: 0.2389, covariance_xy: -0.025967 }),
    ...rowsOf({ ...about, method: 'mean-patient-t' }, { mean_magnitude: [0.595, 0.42, 0.77] }),
    ...rowsOf(about, { data_ellipse_major: 1.4831, data_ellipse_minor: 0.7601 }),
    ...rowsOf(
      { ...about, method: 'hotelling-patient' },
      { centroid_ellipse_major: 0.4472, centroid_ellipse_minor: 0.2292 },
    ),
    ...rowsOf({ ...about, unit: 'share' }, { share_inside_data_ellipse: 349 / 371 }),
    ...rowsOf({ ...about, unit: 'eyes', method: 'count' }, { count_inside_data_ellipse: 349 }),
    ...rowsOf({ ...about, unit: '', method: 'hotelling-patient' }, { hotelling_t2: 10.9051, p: 0.04179 }),
  ];
}

const cylinder = inEach((group) => [
  ...rowsOf(
    { measure: 'corneal_cylinder_magnitude_before', group, n: 410, missing: 9, method: 'mean-patient-t' },
    { n: 410, missing: 9, mean: [1.014, 0.95, 1.08], sd: 0.6, median: 0.875, q25: 0.5, q75: 1.4, min: 0, max: 4.5 },
  ),
  ...rowsOf(
    { measure: 'refractive_cylinder_after_recorded', group, n: 371, method: 'mean-patient-t' },
    { n: 371, missing: 0, mean: [0.55, 0.5, 0.6], sd: 0.4, median: 0.5, q25: 0.25, q75: 0.75, min: 0, max: 2.25 },
  ),
  ...rowsOf(
    { measure: 'refractive_cylinder_after_recorded', group, n: 371, unit: 'share', method: 'wilson-effective-n' },
    shares('within', limits, 371),
  ),
  ...vector('corneal_cylinder_before', group),
  ...vector('refractive_cylinder_after', group),
]);

const lines = ['20/12.5', '20/16', '20/20', '20/25', '20/32', '20/40', '20/63', '20/100', '20/200'];

const acuity = ['udva', 'udva_before', 'cdva', 'cdva_before'].flatMap((measure) =>
  inEach((group) => {
    const about = { measure, group, n: 371, missing: 4, patients: 250, unit: 'logMAR' };
    const rest = { sd: 0.149, median: 0.0969, q25: 0, q75: 0.2, min: -0.0969, max: 1.9, substituted: 2 };
    return [
      ...rowsOf({ ...about, method: 'mean-patient-t' }, { mean: [0.5, 0.48, 0.52] }),
      ...rowsOf(about, { n: 371, missing: 4, ...rest }),
      ...rowsOf({ ...about, unit: 'share', method: 'wilson-effective-n' }, shares('at_or_better', lines, 371)),
    ];
  }),
);

const safety = inEach((group) =>
  rowsOf(
    { measure: 'any_complication', group, n: operated[group], unit: 'share', method: 'exact-effective-n' },
    { share: [4 / 421, 0.0026, 0.0242], count: 4, n: operated[group], missing: 0 },
  ),
);

/**
 * A made-up audit in results rows: 421 eyes operated, 214 with the manual technique and 207 with another. Values are
 * chosen so that their typeset form can be told by hand.
 */
export const auditRows: readonly ResultRow[] = [
  ...operations,
  ...provenance,
  ...flows,
  ...followUp,
  ...baseline,
  ...errors,
  ...subgroups,
  ...cylinder,
  ...acuity,
  ...safety,
];

/** The rows of some measures left out. */
export function without(rows: readonly ResultRow[], leaveOut: (row: ResultRow) => boolean): readonly ResultRow[] {
  return rows.filter((row) => !leaveOut(row));
}

/** Some rows in place of those with the same key. */
export function replaced(rows: readonly ResultRow[], changes: readonly ResultRow[]): readonly ResultRow[] {
  const byKey = new Map(changes.map((row) => [resultKey(row), row]));
  const present = new Set(rows.map(resultKey));
  for (const key of byKey.keys()) if (!present.has(key)) throw new RangeError(`replaced: no row ${key}`);
  return rows.map((row) => byKey.get(resultKey(row)) ?? row);
}
