/** A cylinder vector as a block of table rows, above its panel, and within a sentence. */
function vector(block: string, panel: string): { block: string; panel: string; name: string } {
  return { block, panel, name: panel.charAt(0).toLowerCase() + panel.slice(1) };
}

/** The cylinder vectors that double-angle plots and their table show. */
const named = {
  corneal_cylinder_before: vector(
    'Corneal cylinder before surgery (keratometry, corneal plane)',
    'Corneal, before surgery',
  ),
  corneal_cylinder_after: vector(
    'Corneal cylinder after surgery (keratometry, corneal plane)',
    'Corneal, after surgery',
  ),
  refractive_cylinder_after: vector('Refractive cylinder after surgery (corneal plane)', 'Refractive, after surgery'),
  induced_right: vector(
    'Induced in the cornea, right eyes (keratometry after − before, corneal plane)',
    'Induced, right eyes',
  ),
  induced_left: vector(
    'Induced in the cornea, left eyes (keratometry after − before, corneal plane)',
    'Induced, left eyes',
  ),
  induced_in_incision_frame: vector(
    'Induced in the cornea, incision frame (keratometry after − before, corneal plane)',
    'Induced, both eyes, turned to the incision',
  ),
  cylinder_prediction_error: vector(
    'Prediction error of the cylinder (achieved − predicted residual, corneal plane)',
    'Prediction error of the cylinder',
  ),
  'cylinder_prediction_error:toric': vector(
    'Prediction error of the cylinder, toric lenses (achieved − predicted residual, corneal plane)',
    'Prediction error, toric lenses',
  ),
  split_predicted: vector('Residual predicted, toric lenses (corneal plane)', 'Predicted residual'),
  split_residual: vector('Residual achieved, toric lenses (corneal plane)', 'Achieved residual'),
} as const;

const figures = {
  'double-angle': {
    title: 'Astigmatism before and after surgery as vectors, corneal plane',
    lead: 'Cornea before surgery (keratometry) and refraction after it, both in the corneal plane.',
  },
  'double-angle-cornea': {
    title: 'Corneal astigmatism before and after surgery as vectors, corneal plane',
    lead: 'Keratometry before and after surgery. The two panels need not have the same eyes.',
  },
  'double-angle-induced': {
    title: 'Astigmatism induced in the cornea as vectors, right and left eyes apart, corneal plane',
    lead:
      'Keratometry after surgery less keratometry before it, same device. Right and left eyes are not pooled: an ' +
      'incision at one clock hour lies nasally in one eye and temporally in the other.',
  },
  'induced-incision': {
    title: 'Astigmatism induced in the cornea, turned to the incision, corneal plane',
    lead: 'Keratometry after surgery less keratometry before it, same device, each eye turned until its incision lies at 0°.',
  },
  'double-angle-error': {
    title: 'Prediction error of the cylinder as vectors, corneal plane',
    lead: 'Refractive cylinder achieved less the residual predicted, as vectors in the corneal plane.',
  },
  'double-angle-toric': {
    title: 'Toric lenses: residual astigmatism predicted and achieved as vectors, corneal plane',
    lead: 'The residual predicted with the lens at its intended axis, and the refraction achieved, of the same eyes.',
  },
} as const;

/** English words: cylinder vectors and the figures of them. */
export const vectors = { named, figures } as const;
