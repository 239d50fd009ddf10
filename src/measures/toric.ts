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
import { type AboutVector, likeComponents, secondWorking, vectorPair } from './vector-pair.js';

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
    formula: `${formula}, the shorter way round; + counter-clockwise, never mirrored`,
    worked: `{${to}}° − {${from}}°`,
    source: 'definition; terms kept apart as in Lisy et al. 2025, J Cataract Refract Surg 51:196-203',
    within: [5, 10],
    beyond: 10,
    bins: angleBins,
    of: lensTurn,
  };
}

/** Vergence that one meridian of the lens asks for at the cornea: from the retina to the lens, and on to the cornea. */
function atCornea(sign: '−' | '+'): string {
  const behind = `1336 / ({axial_length} + ${retina} − {effective_lens_position})`;
  return `1336 / (1336 / (${behind} − ({lens_power} ${sign} {lens_cylinder} / 2)) + {effective_lens_position})`;
}

/** Millimetres that the formula adds to the length for the retina. */
const retina = '0.2';

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
    worked: (...inputs) =>
      Number.isNaN(inputs[5] as number)
        ? `${atCornea('−')} − ${atCornea('+')}`
        : '{lens_cylinder} / {policy.lens_plane_ratio}',
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
    worked: '{lens_cylinder} / {lens_cylinder_at_cornea}',
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
  ...likeComponents(
    ['cylinder_prediction_error_x'],
    'achieved − predicted residual',
    '{cylinder_prediction_error_x}',
    (error) => error,
  ),
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
function planned(name: string, part: 'x' | 'y', component: typeof doubleAngleX): Measure {
  const turn = part === 'x' ? 'cos' : 'sin';
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
    worked: (_, incision) =>
      Number.isNaN(incision as number)
        ? '0 − {incision_effect.planned}'
        : `0 − {incision_effect.planned} × ${turn}(2 × {incision_axis}°)`,
    of: (effect, incision) => 0 - component(effect as number, incision as number),
  };
}

const misaligned = 'Tc·[u(intended) − u(observed)], u(a) = (cos 2a, sin 2a)';
const misalignedWorking =
  '{lens_cylinder_at_cornea} × (cos(2 × {lens_axis_intended}°) − cos(2 × {lens_axis@outcome}°))';

/** The residual r = P + A + R, on the eyes that have all parts, so that the sums hold for means too. */
const parts: readonly Measure[] = [
  ...vectorPair(
    'misalignment_effect',
    { ...part, step: true },
    { inputs: aligned, formula: misaligned, worked: misalignedWorking, of: misalignmentX },
    { inputs: aligned, formula: misaligned, worked: secondWorking(misalignedWorking), of: misalignmentY },
  ),
  ...vectorPair(
    'split_residual',
    part,
    ...likeComponents(
      ['refractive_cylinder_after_x', 'predicted_residual_x', 'misalignment_effect_x'],
      'r: refractive cylinder after, of the eyes that have P and A',
      '{refractive_cylinder_after_x}',
      known,
    ),
  ),
  ...vectorPair(
    'split_predicted',
    part,
    ...likeComponents(
      ['predicted_residual_x', 'split_residual_x'],
      'P: predicted residual, lens at the intended axis',
      '{predicted_residual_x}',
      known,
    ),
  ),
  ...vectorPair(
    'split_misalignment',
    part,
    ...likeComponents(
      ['misalignment_effect_x', 'split_residual_x'],
      'A: effect of the misalignment',
      '{misalignment_effect_x}',
      known,
    ),
  ),
  ...vectorPair(
    'split_rest',
    part,
    ...likeComponents(
      ['split_residual_x', 'split_predicted_x', 'split_misalignment_x'],
      'R = r − P − A',
      '{split_residual_x} − {split_predicted_x} − {split_misalignment_x}',
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
      '{induced_corneal_cylinder_x} − {planned_incision_x}',
      (induced, effect, rest) => known(induced - effect, rest),
    ),
  ),
  ...vectorPair(
    'split_unexplained',
    part,
    ...likeComponents(
      ['split_rest_x', 'split_cornea_x'],
      'R − C',
      '{split_rest_x} − {split_cornea_x}',
      (rest, cornea) => rest - cornea,
    ),
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
    worked:
      '{|split_residual|} − √(({split_residual_x} − {split_misalignment_x})² + ({split_residual_y} − {split_misalignment_y})²)',
    source: split,
    of: (x, y, ax, ay) => vectorMagnitude(x, y) - vectorMagnitude(x - ax, y - ay),
  },
];

/** A figure that looks back: nothing below 0.25 D of achieved cylinder, nothing without an axis seen. */
function back(
  name: string,
  unit: 'deg' | 'D',
  formula: string,
  worked: string,
  of: Measure['of'],
  step: boolean,
): Measure {
  const enough = (x: number, y: number): boolean =>
    millionths(vectorMagnitude(x, y)) >= millionths(smallestForBestAxis);
  return {
    ...toric,
    name,
    kind: 'continuous',
    secondary: true,
    unit,
    inputs: [...residual, 'lens_cylinder_at_cornea', 'lens_axis@outcome'],
    formula: `${formula}; looking back, no advice to turn a lens; none below 0.25 D of achieved cylinder`,
    worked,
    source: 'back-calculation from the achieved refraction',
    ...(step ? { step: true as const } : {}),
    of: (x, y, ...rest) => (enough(x as number, y as number) ? of(x as number, y as number, ...rest) : Number.NaN),
  };
}

/** A component of the eye without the lens. */
function withoutLens(part: 'x' | 'y'): string {
  const turn = part === 'x' ? 'cos' : 'sin';
  return `{refractive_cylinder_after_${part}} + {lens_cylinder_at_cornea} × ${turn}(2 × {lens_axis@outcome}°)`;
}

/** Toric lenses: what they are worth, where they stand, what is left and why. */
export const toricMeasures: readonly Measure[] = [
  ...lens,
  ...predictionError,
  ...parts,
  back(
    'best_axis',
    'deg',
    'axis of W = r + Tc·u(observed)',
    `½ × atan2(${withoutLens('y')}, ${withoutLens('x')})`,
    bestAxis,
    true,
  ),
  back(
    'residual_at_best_axis',
    'D',
    '||W| − Tc|, W = r + Tc·u(observed)',
    `|√((${withoutLens('x')})² + (${withoutLens('y')})²) − {lens_cylinder_at_cornea}|`,
    residualAtBestAxis,
    false,
  ),
];
