import { vectorMagnitude } from '../optics/double-angle.js';
import {
  angleOfError,
  correctionIndex,
  flatteningEffect,
  flatteningIndex,
  indexOfSuccess,
  magnitudeOfError,
  torque,
} from '../optics/vector-analysis.js';
import type { Measure } from '../records/measure.js';
import { millionths } from '../units.js';
import { angleBins } from './profiles.js';
import { type AboutVector, likeComponents, vectorPair } from './vector-pair.js';

/** Below this target, dioptres, ratios and angles are noise: they are missing, and counted. */
const smallestJudgedTarget = 0.25;

const source = 'Alpins, Goggin 2004, Surv Ophthalmol 49:109-122 (formulas from memory)';
const strata = ['target_magnitude', 'corneal_type', 'toric'] as const;

/** After the second pass: the target is the predicted residual only where every toric eye analysed has one. */
const shared = {
  family: 'astigmatism',
  plane: 'cornea',
  groupings: 'cohorts',
  second: true,
  secondary: true,
  strata,
  source,
} as const;

const about: AboutVector = { ...shared, unit: 'D' };
const vectors = ['target_induced_x', 'target_induced_y', 'surgically_induced_x', 'surgically_induced_y'] as const;

/** Magnitudes of the two vectors, and the angle between their meridians, as a working writes them. */
const [intended, achieved] = ['{|target_induced|}', '{|surgically_induced|}'];
const between = '({@surgically_induced}° − {@target_induced}°)';
const along = `${achieved} × cos(2 × ${between})`;

/** A quantity of target and surgically induced vector; `judged`: missing where the target is near zero. */
function quantity(
  name: string,
  formula: string,
  worked: string,
  of: (tx: number, ty: number, sx: number, sy: number) => number,
  more: Partial<Measure>,
  judged: boolean,
): Measure {
  const isJudged = (x: number, y: number): boolean =>
    millionths(vectorMagnitude(x, y)) >= millionths(smallestJudgedTarget);
  return {
    ...shared,
    name,
    kind: 'continuous',
    unit: 'D',
    inputs: vectors,
    formula: judged ? `${formula}; none below a target of 0.25 D` : formula,
    worked,
    of: judged ? (tx, ty, sx, sy) => (isJudged(tx, ty) ? of(tx, ty, sx, sy) : Number.NaN) : of,
    ...more,
  };
}

/** Vector analysis of the astigmatism treatment: cornea before → refraction after, corneal plane. */
export const treatmentMeasures: readonly Measure[] = [
  ...vectorPair(
    'target_induced',
    { ...about, role: 'baseline' },
    ...likeComponents(
      ['predicted_residual_x', 'treatment.target_is_predicted', 'corneal_cylinder_before_x'],
      'target − before; target = predicted residual where every toric eye analysed has one, else 0',
      (_, isPredicted) => `${isPredicted === 1 ? '{predicted_residual_x}' : '0'} − {corneal_cylinder_before_x}`,
      (predicted, isPredicted, before) => (isPredicted === 1 ? predicted : isPredicted) - before,
    ),
  ),
  ...vectorPair(
    'surgically_induced',
    about,
    ...likeComponents(
      ['refractive_cylinder_after_x', 'corneal_cylinder_before_x', 'target_induced_x'],
      'refractive cylinder after − corneal cylinder before, of eyes with a target',
      '{refractive_cylinder_after_x} − {corneal_cylinder_before_x}',
      (after, before, target) => (Number.isNaN(target) ? Number.NaN : (after as number) - (before as number)),
    ),
  ),
  ...vectorPair(
    'difference_vector',
    { ...about, better: 'nearer zero' },
    ...likeComponents(
      ['target_induced_x', 'surgically_induced_x'],
      'target-induced − surgically induced',
      '{target_induced_x} − {surgically_induced_x}',
      (target, induced) => target - induced,
    ),
  ),
  quantity(
    'magnitude_of_error',
    '|surgically induced| − |target-induced|; + over-corrected',
    `${achieved} − ${intended}`,
    magnitudeOfError,
    { better: 'nearer zero' },
    false,
  ),
  quantity(
    'angle_of_error',
    'axis of surgically induced − axis of target-induced, the shorter way round; + counter-clockwise',
    between,
    angleOfError,
    { better: 'nearer zero', unit: 'deg', bins: angleBins, within: [5, 10, 15], beyond: 15 },
    true,
  ),
  quantity(
    'correction_index',
    '|surgically induced| / |target-induced|',
    `${achieved} / ${intended}`,
    correctionIndex,
    { kind: 'skewed', unit: '', geometric: true },
    true,
  ),
  quantity(
    'index_of_success',
    '|difference vector| / |target-induced|',
    `√(({target_induced_x} − {surgically_induced_x})² + ({target_induced_y} − {surgically_induced_y})²) / ${intended}`,
    indexOfSuccess,
    { kind: 'skewed', better: 'lower', unit: '' },
    true,
  ),
  quantity(
    'flattening_effect',
    '|surgically induced| cos 2(angle of error); + along the intended meridian',
    along,
    flatteningEffect,
    {},
    false,
  ),
  quantity(
    'flattening_index',
    'flattening effect / |target-induced|',
    `${along} / ${intended}`,
    flatteningIndex,
    { unit: '' },
    true,
  ),
  quantity(
    'torque',
    '|surgically induced| sin 2(angle of error); + counter-clockwise',
    `${achieved} × sin(2 × ${between})`,
    torque,
    { better: 'nearer zero' },
    false,
  ),
];
