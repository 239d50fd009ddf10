import { doubleAngleX, doubleAngleY } from '../optics/double-angle.js';
import { predictedResidualX, predictedResidualY } from '../optics/predicted-residual.js';
import { cornealPlanePower } from '../optics/vertex.js';
import type { Measure } from '../records/measure.js';
import { errorLimits } from './profiles.js';
import { type AboutVector, likeComponents, secondWorking, vectorPair } from './vector-pair.js';

const vertexSource = 'definition of vergence; each principal meridian apart (Holladay, Moran, Kezirian 2001)';
const doubledSource = 'Holladay, Dudeja, Koch 1998, J Cataract Refract Surg 24:57-65';

const cornea = { family: 'astigmatism', unit: 'D', plane: 'cornea', groupings: 'cohorts' } as const;

/** Steps towards the refraction at the corneal plane: the two principal meridians, then their difference. */
const steps: readonly Measure[] = [
  {
    ...cornea,
    kind: 'continuous',
    name: 'corneal_plane_sphere_after',
    inputs: ['sphere@outcome', 'vertex@outcome'],
    formula: 'F / (1 − d F), F = sphere in plus notation, d in metres',
    worked: '{sphere@outcome} / (1 − {vertex@outcome} / 1000 × {sphere@outcome})',
    source: vertexSource,
    step: true,
    of: (sphere, vertex) => cornealPlanePower(sphere, vertex),
  },
  {
    ...cornea,
    kind: 'continuous',
    name: 'corneal_plane_cylinder_after',
    inputs: ['sphere@outcome', 'cylinder@outcome', 'vertex@outcome', 'corneal_plane_sphere_after'],
    formula: 'F / (1 − d F), F = sphere + cylinder; less the corneal-plane sphere',
    worked:
      '({sphere@outcome} + {cylinder@outcome}) / (1 − {vertex@outcome} / 1000 × ({sphere@outcome} + {cylinder@outcome})) − {corneal_plane_sphere_after}',
    source: vertexSource,
    step: true,
    of: (sphere, cylinder, vertex, atCornea) => cornealPlanePower(sphere + cylinder, vertex) - atCornea,
  },
];

/** A cylinder as written: magnitude and steep meridian. */
function written(name: string, magnitude: string, axis: string, about: AboutVector): readonly Measure[] {
  const inputs = [magnitude, axis];
  const worked = (cylinder: number, meridian: number): string =>
    Number.isNaN(meridian) && !Number.isNaN(cylinder) ? `0 × {${magnitude}}` : `{${magnitude}} × cos(2 × {${axis}}°)`;
  return vectorPair(
    name,
    about,
    { inputs, formula: 'C cos 2a, a = steep meridian', worked, of: doubleAngleX },
    { inputs, formula: 'C sin 2a, a = steep meridian', worked: secondWorking(worked), of: doubleAngleY },
  );
}

const about: AboutVector = { ...cornea, source: doubledSource, better: 'nearer zero' };

const predictedInputs = [
  'predicted_cylinder',
  'predicted_axis',
  'predicted_se',
  'predicted_cylinder.vertex',
  'corneal_cylinder_before_x',
  'incision_axis',
  'incision_effect',
  'lens_cylinder',
] as const;

const predictedFormula =
  'the prediction recorded, corneal plane; none, and no toric lens: cornea before − declared effect along the incision';

/** The predicted residual by the way it came: at the cornea, at the spectacles, or from a declared incision. */
function predictedWorking(cylinder: number, axis: number, _equivalent: number, vertex: number): string {
  const along = Number.isNaN(axis) ? '0' : 'cos(2 × {predicted_axis}°)';
  if (Number.isNaN(cylinder)) return '{corneal_cylinder_before_x} − {incision_effect} × cos(2 × {incision_axis}°)';
  if (vertex === 0) return `{predicted_cylinder} × ${along}`;
  const moved = (sign: '+' | '−'): string => {
    const power = `({predicted_se} ${sign} {predicted_cylinder} / 2)`;
    return `${power} / (1 − {predicted_cylinder.vertex} / 1000 × ${power})`;
  };
  return `(${moved('+')} − ${moved('−')}) × ${along}`;
}

/** Astigmatism as vectors, at the corneal plane. */
export const astigmatismMeasures: readonly Measure[] = [
  ...steps,
  ...written('corneal_cylinder_before', 'corneal_cylinder_magnitude_before', 'steepAxis@before', {
    ...about,
    role: 'baseline',
  }),
  ...written('total_corneal_cylinder_before', 'total_corneal_cylinder@before', 'total_corneal_axis@before', {
    ...about,
    role: 'baseline',
  }),
  ...written('refractive_cylinder_after', 'corneal_plane_cylinder_after', 'axis@outcome', {
    ...about,
    strata: ['corneal_type'],
  }),
  ...vectorPair(
    'predicted_residual',
    { ...about, role: 'baseline', source: 'definition; planned effect of the incision as declared' },
    { inputs: predictedInputs, formula: predictedFormula, worked: predictedWorking, of: predictedResidualX },
    {
      inputs: predictedInputs.map((name) => name.replace(/_x$/, '_y')),
      formula: predictedFormula,
      worked: secondWorking(predictedWorking),
      of: predictedResidualY,
    },
  ),
  ...vectorPair(
    'cylinder_prediction_error',
    {
      ...about,
      within: errorLimits,
      strata: ['corneal_type'],
      // Told for toric lenses, whose primary outcome it is.
      secondary: true,
      source: 'Abulafia, Koch, Holladay, Wang, Hill 2018, J Cataract Refract Surg 44:1138-1145 (from memory)',
    },
    ...likeComponents(
      ['refractive_cylinder_after_x', 'predicted_residual_x'],
      'achieved − predicted residual',
      '{refractive_cylinder_after_x} − {predicted_residual_x}',
      (achieved, predicted) => achieved - predicted,
    ),
  ),
];
