import type { ResultRow } from '../../src/records/result.js';
import { auditRows } from './audit.js';
import { type About, rowsOf, type Shown } from './rows.js';

/** The comparison of the made-up audit: another technique against manual, the reference. */
export const pair = 'technique=laser & co vs manual';

type Rows = readonly ResultRow[];

/** An estimate of two cohorts, with what stands beside it; 371 eyes of 255 patients unless stated. */
export function estimate(
  about: Partial<About> & { measure: string },
  statistic: string,
  shown: Shown,
  beside: Readonly<Record<string, readonly [value: number, method: string]>> = {},
): Rows {
  const base = { group: pair, n: 371, missing: 3, patients: 255, note: 'design:mixed', ...about };
  const others = Object.entries(beside).flatMap(([name, [value, method]]) =>
    rowsOf({ ...base, note: '', method, unit: unitOf(name, base.unit) }, { [`${name}:${statistic}`]: value }),
  );
  return [...rowsOf(base, { [statistic]: shown }), ...others];
}

function unitOf(name: string, unit = 'D'): string {
  if (name.startsWith('eyes_needed')) return 'eyes';
  return name === 'half_width' || name === 'detectable' ? unit : '';
}

const primary = (verdict: string): string => `design:mixed;primary:k=2;verdict:${verdict}`;
const t = 'difference-patient-t';
const share = { unit: 'share', method: 'square-and-add' } as const;

export const design: Rows = rowsOf(
  { measure: 'design', group: pair, n: 419, patients: 260, unit: 'patients', note: 'design:mixed' },
  { patients_only_a: 120, patients_only_b: 121, patients_both: 19 },
);

const primaries: Rows = [
  ...rowsOf({ measure: 'primaries', n: 421, unit: '', method: 'bonferroni' }, { count: 2 }),
  ...rowsOf({ measure: 'primaries', n: 421, unit: 'share', method: 'bonferroni' }, { confidence: 0.975 }),
];

const mix = (field: string, value: string, manual: number, laser: number): Rows => [
  ...rowsOf(
    { measure: 'confounding', group: `${field}=${value};technique=manual`, n: manual, unit: 'eyes' },
    { count: manual },
  ),
  ...rowsOf(
    { measure: 'confounding', group: `${field}=${value};technique=laser & co`, n: laser, unit: 'eyes' },
    { count: laser },
  ),
];

const common = (field: string, value: number, note = ''): Rows =>
  rowsOf({ measure: 'confounding', group: pair, n: 419, unit: 'share', note }, { [`overlap:${field}`]: value });

/** Groups are written with their fields in alphabetical order: surgeon before technique, technique before year. */
const confounding: Rows = [
  ...mix('surgeon', 'S1', 200, 40),
  ...mix('surgeon', 'S2', 13, 166),
  ...common('surgeon', 0.2552, 'uneven'),
  ...rowsOf({ measure: 'confounding', group: 'technique=manual;year=2025', n: 213, unit: 'eyes' }, { count: 213 }),
  ...rowsOf({ measure: 'confounding', group: 'technique=laser & co;year=2025', n: 206, unit: 'eyes' }, { count: 206 }),
  ...common('year', 1),
  ...rowsOf({ measure: 'overlap', group: pair, n: 419, unit: 'months', note: 'uneven' }, { overlap_months: 3 }),
  ...rowsOf({ measure: 'overlap', group: pair, n: 419, unit: 'months' }, { months: 12 }),
];

const standardised = (measure: string, value: number | undefined, note = ''): Rows =>
  rowsOf(
    { measure, group: pair, n: 419, unit: '', note, method: 'standardised-difference' },
    { standardised_difference: value },
  );

const baseline: Rows = [
  ...standardised('age', 0.034),
  ...standardised('female', -0.151, 'imbalance'),
  ...standardised('toric', undefined, 'not-estimable:no-spread'),
  ...standardised('axial_length', 0.025),
  ...standardised('corneal_cylinder_magnitude_before', 0),
  ...standardised('udva_before', 0.1),
  ...standardised('cdva_before', -0.0049),
];

const followUp: Rows = ['', ':astigmatism', ':corrected', ':uncorrected'].flatMap((family) => [
  ...standardised(`follow_up_days${family}`, 0.31, 'imbalance'),
  ...estimate({ measure: `follow_up_days${family}`, unit: 'days', method: t }, 'difference_mean', [6.4, 1.2, 11.6]),
]);

const error = { measure: 'prediction_error' } as const;

const predictionError: Rows = [
  ...estimate({ ...error, method: t }, 'difference_mean', [-0.125, -0.204, -0.046], {
    p: [0.0021, t],
    df: [212.34, t],
  }),
  ...estimate({ ...error, unit: '', method: 'ratio-jackknife-t' }, 'ratio_sd', [0.875, 0.8049, 0.9512], {
    p: [0.0004, 'ratio-jackknife-t'],
    df: [230.05, 'ratio-jackknife-t'],
  }),
  ...estimate({ ...error, unit: '', method: 'placements-patient-t' }, 'relative_effect_absolute', [0.445, 0.39, 0.5], {
    p: [0.05, 'placements-patient-t'],
    df: [221.5, 'placements-patient-t'],
  }),
  ...estimate({ ...error, method: 'shift-placements' }, 'shift_absolute', [-0.045, -0.1, 0.004]),
  ...estimate({ ...error, ...share }, 'difference_share_within_0.25', [0.05, -0.02, 0.12]),
  ...estimate(
    { ...error, ...share, note: primary('better') },
    'difference_share_within_0.50',
    [0.105, 0.0214, 0.1886],
    {
      p: [0.0049, t],
      df: [219.96, t],
      p_adjusted: [0.0098, 'holm'],
      half_width: [0.0836, 'square-and-add'],
      detectable: [0.12, 'power-80'],
    },
  ),
  ...estimate({ ...error, unit: '', method: 'log-ratio-patient-t' }, 'ratio_share_within_0.50', [1.2, 1.03, 1.4]),
  ...estimate({ ...error, ...share }, 'difference_share_within_1.00', [-0.012, -0.06, 0.036]),
];

const adjusted: Rows = [
  ...estimate(
    { ...error, n: 360, method: 'linear-model-patient-t' },
    'same_eyes_difference_mean',
    [-0.12, -0.2, -0.04],
  ),
  ...estimate(
    { ...error, n: 360, method: 'linear-model-patient-t' },
    'adjusted_difference_mean',
    [-0.101, -0.18, -0.022],
    {
      p: [0.0125, 'linear-model-patient-t'],
      df: [210, 'linear-model-patient-t'],
    },
  ),
];

const vector = { measure: 'refractive_cylinder_after', method: 'centroid-difference' } as const;

const acuity = { measure: 'cdva', unit: 'logMAR', method: t } as const;

const outcomes: Rows = [
  ...predictionError,
  ...adjusted,
  ...rowsOf(
    { ...vector, group: pair, n: 371, patients: 255, note: 'design:mixed' },
    {
      difference_x: 0.1,
      difference_y: 0,
      difference_magnitude: 0.1,
      difference_ellipse_major: 0.125,
      difference_ellipse_minor: 0.1,
    },
  ),
  ...rowsOf({ ...vector, group: pair, n: 371, unit: 'deg', note: 'design:mixed' }, { difference_axis: 180 }),
  ...rowsOf(
    { ...vector, group: pair, n: 371, unit: '' },
    { 'p:difference_centroid': 0.0333, 'df:difference_centroid': 238.24 },
  ),
  ...estimate({ ...acuity, note: primary('inconclusive') }, 'difference_mean', [0.012, -0.058, 0.082], {
    p: [0.7008, t],
    df: [215, t],
    p_adjusted: [0.7008, 'holm'],
    half_width: [0.07, t],
    detectable: [0.101, 'power-80'],
    eyes_needed_margin: [1544, 'power-80'],
  }),
  ...estimate(
    { ...acuity, unit: 'share', n: 371, note: 'design:mixed;not-estimable:no-spread', method: 'square-and-add' },
    'difference_share_at_or_better_20/40',
    undefined,
  ),
  ...estimate(
    { measure: 'any_complication', n: 421, missing: 0, ...share, note: 'design:independent' },
    'difference_share',
    [0.0004, -0.0211, 0.0219],
    { p: [0.985, 'fisher-mid-p'] },
  ),
  ...estimate(
    {
      measure: 'any_complication',
      n: 421,
      missing: 0,
      unit: '',
      method: 'log-ratio-patient-t',
      note: 'design:independent;not-estimable:zero-share',
    },
    'ratio_share',
    undefined,
  ),
];

const few = { n: 240, patients: 240 } as const;

/** The same with one eye a patient, and without eyes that are asked about. */
const sensitivity: Rows = ['one-eye', 'without-queries'].flatMap((way) => [
  ...['', ';technique=laser & co', ';technique=manual'].flatMap((cohort) => [
    ...rowsOf(
      {
        measure: 'prediction_error',
        group: `sensitivity=${way}${cohort}`,
        ...few,
        unit: 'share',
        method: 'wilson-effective-n',
      },
      { 'share_within_0.50': [0.7625, 0.7046, 0.812] },
    ),
    ...rowsOf(
      {
        measure: 'prediction_error',
        group: `sensitivity=${way}${cohort}`,
        ...few,
        unit: 'eyes',
        method: 'count',
      },
      { 'count_within_0.50': 183 },
    ),
    ...rowsOf(
      { measure: 'prediction_error', group: `sensitivity=${way}${cohort}`, ...few, method: 'mean-patient-t' },
      { mean: [-0.06, -0.115, -0.005] },
    ),
    ...rowsOf(
      {
        measure: 'cdva',
        group: `sensitivity=${way}${cohort}`,
        n: 4,
        unit: 'share',
        note: 'not-estimable:few-patients',
      },
      { 'share_at_or_better_20/40': 1 },
    ),
    ...rowsOf(
      { measure: 'cdva', group: `sensitivity=${way}${cohort}`, n: 4, unit: 'eyes', method: 'count' },
      { 'count_at_or_better_20/40': 4 },
    ),
  ]),
  ...rowsOf(
    { measure: 'prediction_error', group: `sensitivity=${way};${pair}`, ...few, ...share, note: 'design:independent' },
    { 'difference_share_within_0.50': [0.0925, -0.0111, 0.1961] },
  ),
  ...rowsOf(
    {
      measure: 'cdva',
      group: `sensitivity=${way};${pair}`,
      ...few,
      unit: 'logMAR',
      method: t,
      note: 'design:independent',
    },
    { difference_mean: [0.02, -0.06, 0.1] },
  ),
]);

/** The made-up audit with its cohorts compared: two primaries, one of them open, everything else exploratory. */
export const comparedRows: Rows = [
  ...auditRows,
  ...primaries,
  ...design,
  ...confounding,
  ...baseline,
  ...followUp,
  ...outcomes,
  ...sensitivity,
];
