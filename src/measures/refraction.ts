import { comparedEquivalent, otherLaneShift, otherVertexShift } from '../optics/compared-equivalent.js';
import { sphericalEquivalent } from '../optics/spherical-equivalent.js';
import type { Measure } from '../records/measure.js';
import { errorBins, errorLimits } from './profiles.js';

const difference = (a: number, b: number): number => a - b;

/** What every signed refractive error has in common: spectacle plane, achieved minus intended. */
const signedError = {
  family: 'refraction',
  kind: 'continuous',
  better: 'nearer zero',
  unit: 'D',
  plane: 'spectacle',
  groupings: 'all',
  within: errorLimits,
  bins: errorBins,
} as const;

const refractionStep = {
  family: 'refraction',
  kind: 'continuous',
  unit: 'D',
  plane: 'spectacle',
  groupings: 'cohorts',
  step: true,
} as const;

const refraction = ['sphere@outcome', 'cylinder@outcome'] as const;
const restating = [...refraction, 'vertex@outcome', 'policy.restates_vertex'] as const;

/** The equivalent that predictions are compared with, and what the policies not chosen would add to it. */
const compared: readonly Measure[] = [
  {
    ...refractionStep,
    name: 'spherical_equivalent_compared',
    inputs: restating,
    formula: 'sphere + cylinder / 2; beyond 3 D and found at another vertex distance: restated for 12 mm by meridian',
    source: 'settled for this project; vergence',
    of: comparedEquivalent,
  },
  {
    ...refractionStep,
    name: 'other_lane_shift',
    inputs: [...restating, 'lane@outcome', 'policy.lane_to_infinity'],
    formula: 'what the other policy on the length of the lane would add: ∓ 1 / metres',
    source: 'definition of vergence',
    of: otherLaneShift,
  },
  {
    ...refractionStep,
    name: 'other_vertex_shift',
    inputs: restating,
    formula: 'what the other policy on the vertex distance would add',
    source: 'vergence',
    of: otherVertexShift,
  },
];

const planned: readonly Measure[] = [
  {
    name: 'spherical_equivalent',
    family: 'refraction',
    kind: 'continuous',
    unit: 'D',
    plane: 'spectacle',
    inputs: refraction,
    formula: 'sphere + cylinder / 2',
    worked: '{sphere@outcome} + {cylinder@outcome} / 2',
    source: 'definition',
    groupings: 'cohorts',
    of: sphericalEquivalent,
  },
  {
    ...signedError,
    name: 'prediction_error',
    strata: ['misalignment'],
    inputs: ['spherical_equivalent_compared', 'predicted_se'],
    formula: 'achieved − predicted; negative is more myopic than predicted',
    worked: '{spherical_equivalent_compared} − {predicted_se}',
    source: 'Langenbucher et al. 2022, PLoS One 17:e0267352 (sign)',
    of: difference,
  },
  {
    ...signedError,
    name: 'prediction_error_centred',
    inputs: ['prediction_error', 'prediction_error.group_mean'],
    formula: 'prediction error − mean prediction error of its lens model',
    worked: '{prediction_error} − {prediction_error.group_mean}',
    source: 'Wang, Koch, Hill, Abulafia 2017, J Cataract Refract Surg 43:999-1002',
    second: true,
    absoluteFrom: 'prediction_error_centred_left_out',
    of: difference,
  },
  {
    ...signedError,
    name: 'prediction_error_centred_left_out',
    inputs: ['prediction_error', 'prediction_error.group_mean_left_out'],
    formula: 'prediction error − mean prediction error of its lens model over all other patients',
    worked: '{prediction_error} − {prediction_error.group_mean_left_out}',
    source: 'leave-one-out; a lens model must not become perfect by its own mean',
    second: true,
    step: true,
    of: difference,
  },
  {
    ...signedError,
    name: 'target_error',
    inputs: ['spherical_equivalent', 'target_se'],
    formula: 'achieved − intended by the surgeon; negative is more myopic than intended',
    worked: '{spherical_equivalent} − {target_se}',
    source: 'Gale et al. 2009, Eye 23:149-152 (kept apart from the prediction error)',
    of: difference,
  },
  {
    name: 'refractive_cylinder_after_recorded',
    family: 'refraction',
    kind: 'continuous',
    better: 'lower',
    unit: 'D',
    plane: 'spectacle',
    inputs: ['recordedCylinder@outcome'],
    formula: 'magnitude of the cylinder as recorded',
    source: 'definition',
    groupings: 'cohorts',
    within: errorLimits,
    of: Math.abs,
  },
];

/** What surgery was to change of the spherical equivalent, and what it changed: steps towards their regression. */
const changes: readonly Measure[] = [
  {
    ...refractionStep,
    name: 'spherical_equivalent_before',
    inputs: ['sphere@before', 'cylinder@before'],
    formula: 'sphere + cylinder / 2',
    worked: '{sphere@before} + {cylinder@before} / 2',
    source: 'definition',
    of: sphericalEquivalent,
  },
  {
    ...refractionStep,
    name: 'planned_change',
    inputs: ['predicted_se', 'spherical_equivalent_before'],
    formula: 'predicted − spherical equivalent before surgery',
    worked: '{predicted_se} − {spherical_equivalent_before}',
    source: 'decision of the project: planned is what was predicted for the lens implanted',
    of: difference,
  },
  {
    ...refractionStep,
    name: 'achieved_change',
    inputs: ['spherical_equivalent_compared', 'spherical_equivalent_before'],
    formula: 'achieved − spherical equivalent before surgery',
    worked: '{spherical_equivalent_compared} − {spherical_equivalent_before}',
    source: 'definition',
    of: difference,
  },
];

/** Prediction error of one supplied formula, beside the primary one. */
function formulaError(formula: string): Measure {
  return {
    ...signedError,
    name: `prediction_error:${formula}`,
    inputs: ['spherical_equivalent_compared', `predicted_se:${formula}`],
    formula: `achieved − predicted by ${formula}`,
    worked: `{spherical_equivalent_compared} − {predicted_se:${formula}}`,
    source: 'Langenbucher et al. 2022, PLoS One 17:e0267352 (sign)',
    of: difference,
  };
}

/** The measures of refraction: the primary prediction first, then every supplied formula. */
export function refractionMeasures(formulas: readonly string[]): readonly Measure[] {
  return [...compared, ...planned, ...changes, ...formulas.map(formulaError)];
}
