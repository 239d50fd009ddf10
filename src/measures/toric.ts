import { doubleAngleX, doubleAngleY, vectorMagnitude } from '../optics/double-angle.js';
import {
  bestAxis,
  cylinderAtCornea,
  effectiveLensPosition,
  lensTurn,
  misalignmentX,
  misalignmentY,
  residualAtBestAxis,
} from '../optics/toric-lens.js';
import type { Measure } from '../records/measure.js';
import { millionths } from '../units.js';
import { angleBins, errorLimits } from './profiles.js';
import { type AboutVector, likeComponents, vectorPair } from './vector-pair.js';

const toric = { family: 'toric', groupings: 'cohorts' } as const;
const vergence = 'vergence; approach of Fam, Lim 2007, J Cataract Refract Surg 33:2072-2076';
const split = 'definition; the parts add up to the residual';

/** Below this achieved cylinder, dioptres, a best axis is noise. */
const smallestForBestAxis = 0.25;

/** Turns of the lens that may not be merged: where it was put, where it went, where it stands. */
function turn(name: string, from: string, to: string, formula: string): Measure {
  return {
    ...toric,
    name,
    kind: 'continuous',
    better: 'nearer zero',
    unit: 'deg',
    inputs: [from, to],
    formula: `${formula}; + counter-clockwise, never mirrored`,
    source: 'definition; terms kept apart as in Lisy et al. 2025, J Cataract Refract Surg 51:196-203',
    within: [5, 10],
    beyond: 10,
    bins: angleBins,
    of: lensTurn,
  };
}

const lens: readonly Measure[] = [
  {
    ...toric,
    name: 'effective_lens_position',
    kind: 'continuous',
    unit: 'mm',
    inputs: ['axial_length', 'k_mean_before', 'lens_power', 'predicted_se', 'policy.vertex'],
    formula: 'depth at which a thin lens of the implanted power gives the predicted refraction',
    source: vergence,
    step: true,
    of: effectiveLensPosition,
  },
  {
    ...toric,
    name: 'lens_cylinder_at_cornea',
    kind: 'continuous',
    role: 'baseline',
    unit: 'D',
    plane: 'cornea',
    inputs: [
      'lens_power',
      'lens_cylinder',
      'axial_length',
      'k_mean_before',
      'effective_lens_position',
      'policy.lens_plane_ratio',
    ],
    formula: 'Tc: label moved to the cornea meridian by meridian at the effective lens position; or label / ratio',
    source: vergence,
    of: (power, cylinder, length, keratometry, position, ratio) =>
      Number.isNaN(ratio) ? cylinderAtCornea(power, cylinder, length, keratometry, position) : cylinder / ratio,
  },
  {
    ...toric,
    name: 'lens_plane_ratio',
    kind: 'continuous',
    role: 'baseline',
    unit: '',
    inputs: ['lens_cylinder', 'lens_cylinder_at_cornea'],
    formula: 'cylinder of the label / cylinder at the cornea',
    source: vergence,
    of: (label, atCornea) => label / atCornea,
  },
  {
    ...turn('lens_placement_error', 'lens_axis_intended', 'lens_axis_end', 'end of surgery − intended'),
    secondary: true,
  },
  turn('lens_rotation', 'lens_axis_end', 'lens_axis@followup', 'follow-up − end of surgery'),
  {
    ...turn('lens_misalignment', 'lens_axis_intended', 'lens_axis@followup', 'follow-up − intended'),
    secondary: true,
  },
];

/** The primary outcome of toric lenses, over these alone: eyes without one have a prediction of another kind, or none. */
const predictionError = vectorPair(
  'cylinder_prediction_error:toric',
  { ...toric, unit: 'D', plane: 'cornea', better: 'nearer zero', within: errorLimits, source: 'definition' },
  ...likeComponents(['cylinder_prediction_error_x'], 'achieved − predicted residual', (error) => error),
);

const part: AboutVector = {
  ...toric,
  unit: 'D',
  plane: 'cornea',
  better: 'nearer zero',
  secondary: true,
  source: split,
};
const aligned = ['lens_cylinder_at_cornea', 'lens_axis_intended', 'lens_axis@outcome'] as const;
const residual = ['refractive_cylinder_after_x', 'refractive_cylinder_after_y'] as const;
const known = (value: number, ...others: number[]): number => (others.some(Number.isNaN) ? Number.NaN : value);

/** A component of what the incision was planned to do: flattening along itself; nothing where none is declared. */
function planned(name: string, part: string, component: typeof doubleAngleX): Measure {
  return {
    ...toric,
    name,
    kind: 'continuous',
    unit: 'D',
    plane: 'cornea',
    inputs: ['incision_effect.planned', 'incision_axis'],
    formula: `−declared effect at the incision, ${part}; 0 where none is declared`,
    source: 'definition',
    step: true,
    of: (effect, incision) => 0 - component(effect as number, incision as number),
  };
}

/** The residual r = P + A + R, on the eyes that have all parts, so that the sums hold for means too. */
const parts: readonly Measure[] = [
  ...vectorPair(
    'misalignment_effect',
    { ...part, step: true },
    { inputs: aligned, formula: 'Tc·[u(intended) − u(observed)], x', of: misalignmentX },
    { inputs: aligned, formula: 'Tc·[u(intended) − u(observed)], y', of: misalignmentY },
  ),
  ...vectorPair(
    'split_residual',
    part,
    ...likeComponents(
      ['refractive_cylinder_after_x', 'predicted_residual_x', 'misalignment_effect_x'],
      'r: refractive cylinder after, of the eyes that have P and A',
      known,
    ),
  ),
  ...vectorPair(
    'split_predicted',
    part,
    ...likeComponents(
      ['predicted_residual_x', 'split_residual_x'],
      'P: predicted residual, lens at the intended axis',
      known,
    ),
  ),
  ...vectorPair(
    'split_misalignment',
    part,
    ...likeComponents(['misalignment_effect_x', 'split_residual_x'], 'A: effect of the misalignment', known),
  ),
  ...vectorPair(
    'split_rest',
    part,
    ...likeComponents(
      ['split_residual_x', 'split_predicted_x', 'split_misalignment_x'],
      'R = r − P − A',
      (r, p, a) => r - p - a,
    ),
  ),
  planned('planned_incision_x', 'x', doubleAngleX),
  planned('planned_incision_y', 'y', doubleAngleY),
  ...vectorPair(
    'split_cornea',
    part,
    ...likeComponents(
      ['induced_corneal_cylinder_x', 'planned_incision_x', 'split_rest_x'],
      'C = (K after − K before) − planned effect of the incision',
      (induced, effect, rest) => known(induced - effect, rest),
    ),
  ),
  ...vectorPair(
    'split_unexplained',
    part,
    ...likeComponents(['split_rest_x', 'split_cornea_x'], 'R − C', (rest, cornea) => rest - cornea),
  ),
  {
    ...toric,
    name: 'cylinder_saved_by_alignment',
    kind: 'continuous',
    secondary: true,
    unit: 'D',
    plane: 'cornea',
    inputs: ['split_residual_x', 'split_residual_y', 'split_misalignment_x', 'split_misalignment_y'],
    formula: '|r| − |r − A|: what perfect alignment would have saved; may be negative',
    source: split,
    of: (x, y, ax, ay) => vectorMagnitude(x, y) - vectorMagnitude(x - ax, y - ay),
  },
];

/** A figure that looks back: nothing below 0.25 D of achieved cylinder, nothing without an axis seen. */
function back(name: string, unit: 'deg' | 'D', formula: string, of: Measure['of'], step: boolean): Measure {
  const enough = (x: number, y: number): boolean =>
    millionths(vectorMagnitude(x, y)) >= millionths(smallestForBestAxis);
  return {
    ...toric,
    name,
    kind: 'continuous',
    secondary: true,
    unit,
    inputs: [...residual, 'lens_cylinder_at_cornea', 'lens_axis@outcome'],
    formula: `${formula}; looking back, no advice to turn a lens`,
    source: 'back-calculation from the achieved refraction',
    ...(step ? { step: true as const } : {}),
    of: (x, y, ...rest) => (enough(x as number, y as number) ? of(x as number, y as number, ...rest) : Number.NaN),
  };
}

/** Toric lenses: what they are worth, where they stand, what is left and why. */
export const toricMeasures: readonly Measure[] = [
  ...lens,
  ...predictionError,
  ...parts,
  back('best_axis', 'deg', 'axis of W = r + Tc·u(observed)', bestAxis, true),
  back('residual_at_best_axis', 'D', '||W| − Tc|, W = r + Tc·u(observed)', residualAtBestAxis, false),
];
