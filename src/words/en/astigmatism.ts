/** English words: tables of astigmatism treatment, induced astigmatism and toric lenses. */
const titles = {
  'astigmatism-treatment': (visit: string, target: string) =>
    `Vector analysis of the astigmatism treatment at ${visit}, corneal plane: cornea before, refraction after; target = ${target} (eligible eyes)`,
  'induced-astigmatism': (visit: string) =>
    `Astigmatism induced in the cornea at ${visit}: keratometry after less before, same device, incision frame (eligible eyes)`,
  'toric-alignment': (visit: string) =>
    `Toric lenses at ${visit}: where they stand, and what is left (eligible toric eyes)`,
} as const;

const targets = { predicted: 'the predicted residual', zero: '0 for every eye' } as const;

/** Outcomes that cohorts are compared by: as a block of rows, and in a few words. */
const outcomes: Readonly<Record<string, { block: string; name: string }>> = {
  cylinder_prediction_error: {
    block: 'Prediction error of the cylinder, D (achieved − predicted residual, corneal plane)',
    name: 'Cylinder prediction error',
  },
  'cylinder_prediction_error:toric': {
    block: 'Prediction error of the cylinder, D (achieved − predicted residual, corneal plane, toric lenses)',
    name: 'Cylinder prediction error, toric lenses',
  },
  surgically_induced: { block: 'Surgically induced vector, D (corneal plane)', name: 'Surgically induced vector' },
  difference_vector: { block: 'Difference vector, D (target − achieved, corneal plane)', name: 'Difference vector' },
  magnitude_of_error: { block: 'Magnitude of error, D (+ over-corrected)', name: 'Magnitude of error' },
  angle_of_error: { block: 'Angle of error, degrees (+ counter-clockwise)', name: 'Angle of error' },
  correction_index: { block: 'Correction index (1 is ideal)', name: 'Correction index' },
  index_of_success: { block: 'Index of success (0 is ideal)', name: 'Index of success' },
  flattening_effect: {
    block: 'Flattening effect, D (+ along the intended meridian)',
    name: 'Flattening effect',
  },
  flattening_index: { block: 'Flattening index (1 is ideal)', name: 'Flattening index' },
  torque: { block: 'Torque, D (+ counter-clockwise)', name: 'Torque' },
  corneal_cylinder_after: {
    block: 'Corneal cylinder after surgery (keratometry, corneal plane)',
    name: 'Corneal cylinder after surgery',
  },
  induced_along_incision: {
    block: 'Induced along the incision, D (− flattened)',
    name: 'Induced along the incision',
  },
  induced_torque: { block: 'Induced torque about the incision, D (+ counter-clockwise)', name: 'Induced torque' },
  induced_in_incision_frame: {
    block: 'Induced in the incision frame, D (along, torque)',
    name: 'Induced in the incision frame',
  },
  lens_placement_error: {
    block: 'Placement error of the lens, degrees (end of surgery − intended)',
    name: 'Lens placement error',
  },
  lens_rotation: { block: 'Rotation of the lens, degrees (follow-up − end of surgery)', name: 'Lens rotation' },
  lens_misalignment: {
    block: 'Misalignment of the lens, degrees (follow-up − intended)',
    name: 'Lens misalignment',
  },
  split_residual: { block: 'Residual r of toric eyes, D (corneal plane)', name: 'Residual of toric eyes' },
  split_predicted: { block: 'P, predicted residual, D (corneal plane)', name: 'Predicted residual of toric eyes' },
  split_misalignment: { block: 'A, from misalignment, D (corneal plane)', name: 'Residual from misalignment' },
  split_rest: { block: 'R = r − P − A, D (corneal plane)', name: 'Rest of the residual' },
  split_cornea: { block: 'C, unplanned corneal change, D (corneal plane)', name: 'Unplanned corneal change' },
  split_unexplained: { block: 'R − C, D (corneal plane)', name: 'Unexplained residual' },
  cylinder_saved_by_alignment: {
    block: 'Cylinder that perfect alignment would have saved, D',
    name: 'Cylinder saved by alignment',
  },
  residual_at_best_axis: {
    block: 'Cylinder that the best axis would have left, D (looking back)',
    name: 'Cylinder at the best axis',
  },
};

const fields = {
  corneal_type: 'Cornea before surgery',
  incision_sector: 'Incision meridian',
  incision_width: 'Incision width, mm',
  target_magnitude: 'Target-induced vector, D',
  toric: 'Toric lens',
  eye: 'Eye',
} as const;

const rows = {
  vectorMean: 'Vector mean, D @ steep meridian in degrees',
  arithmeticMean: 'Mean magnitude, D',
  medianMagnitude: 'Median magnitude, D',
  geometricMean: 'Geometric mean',
  median: 'Median',
  mean: 'Mean',
  meanAbsolute: 'Mean without sign',
  medianAbsolute: 'Median without sign',
  within: (limit: string) => `≤ ${limit}°, n/N, %`,
  withinDioptre: (limit: string) => `≤ ${limit} D, n/N, %`,
  beyond: (limit: string) => `> ${limit}°, n/N, %`,
  zeroInduced: 'Nothing induced, eyes left out of the geometric mean',
  centroidAlong: 'Centroid: along; torque, D',
  regionOf: (level: string) => `${level} region of the centroid: semi-axes, D`,
  centroidLength: 'Length of the centroid, D',
  test: 'Both at once against 0: T²',
  p: 'Both at once against 0: p',
  effect: 'Cylinder of the lens at the cornea, mean (SD), D',
  ratio: 'Label over cylinder at the cornea, median (range)',
} as const;

const blocks = {
  targetInduced: 'Target-induced vector (target − before)',
  lens: 'The lens',
  neutral: 'Prediction error of the spherical equivalent by misalignment, D (spectacle plane)',
} as const;

const strata = {
  '(-,1)': 'Target < 1.00 D',
  '[1,-)': 'Target ≥ 1.00 D',
  yes: 'Toric lens',
  no: 'No toric lens',
  'with the rule': 'With the rule',
  'against the rule': 'Against the rule',
  oblique: 'Oblique',
  low: 'Low (< 0.50 D)',
  '180': '180° ± 22.5',
  '45': '45° ± 22.5',
  '90': '90° ± 22.5',
  '135': '135° ± 22.5',
  '[0,5]': 'Misaligned ≤ 5°: mean',
  '(5,-)': 'Misaligned > 5°: mean',
} as const;

const notes = {
  treatment:
    'Target-induced = target − before, surgically induced = after − before, difference = target − after; meridians are those of steepening. Of one eye: correction index = |surgically induced|/|target-induced|, index of success = |difference|/|target-induced|, flattening effect = the part of the surgically induced vector along the target-induced one.',
  nearZero:
    'Below 0.25 D of target the indices and the angle of error are missing, and counted; vectors, magnitude of error, flattening effect and torque are kept.',
  bias: 'The correction index of small treatments exceeds 1 by the noise of measurement alone: read the flattening index beside it.',
  hybrid:
    'Before is a cornea and after a refraction: single numbers of such pairs can mislead. The prediction error of the cylinder is the primary outcome.',
  signs: 'Flattening effect: + along the intended meridian. Induced along the incision, in its own table: − flattened.',
  anterior:
    'Only the anterior cornea was measured: the posterior cornea, about 0.3 D and steep vertically in most eyes, stays in the errors, which lean against the rule for that reason.',
  total: 'Total corneal astigmatism was measured in some eyes: results.csv has its vector.',
  types:
    'With the rule: steep from 60 to 120°; against: below 30 or above 150°; oblique: the rest; low: below 0.50 D, whatever the meridian. Of the cornea before surgery.',
  neutralTurn:
    'Turning a lens does not change the spherical equivalent: a surprise in it is not explained by misalignment.',
  meanIsNotCentroid:
    'Mean magnitude is not the length of the centroid: it holds the noise of measurement, and is never the smaller of the two.',
  frame:
    'Along = M cos 2(a − incision): − flattened along the incision, + steepened. Torque = M sin 2(a − incision): + counter-clockwise. Both are changes of astigmatism, twice the coupled change of power. Pooled in the frame of the incision only; no left eye is mirrored.',
  sectors: 'Incision meridian: the 45° sector around it.',
  turns:
    'Placement error, rotation and misalignment are three quantities and are not merged; + counter-clockwise facing the patient, in both eyes.',
  available: (list: string) => `The data allow: ${list}.`,
  notAvailable: (list: string) => `Not in the data: ${list}.`,
  repositioned: (eyes: string) => `Lenses that were turned again count once, with the axis before: ${eyes} eyes.`,
  eachEye:
    'Cylinder of the lens at the cornea: its two meridians moved there by vergence at the effective lens position that gives the predicted refraction of the eye.',
  declaredRatio: (ratio: string) => `Cylinder of the lens at the cornea: label / ${ratio}, as declared for every eye.`,
  split:
    'Residual r = P + A + R: P predicted with the lens at the intended axis, A from misalignment, R the rest; C the change of the cornea less the planned effect of the incision. Vector means add up to that of r; magnitudes do not. No percentages are given: parts may point against each other.',
  planned: (magnitude: string) => `Planned effect of the incision: ${magnitude} D of flattening along it.`,
  unplanned: 'No effect of the incision was declared: C is the whole change of the cornea.',
  bestAxis:
    'Best axis: the cylinder this lens would have left at the axis that suits the achieved refraction; looking back, no advice to turn a lens. Not given below 0.25 D of achieved cylinder, nor where the axis was not seen.',
} as const;

const turns = {
  lens_placement_error: 'placement error',
  lens_rotation: 'rotation',
  lens_misalignment: 'misalignment',
} as const;

export const astigmatism = {
  titles,
  targets,
  outcomes,
  fields,
  rows,
  blocks,
  strata,
  notes,
  turns,
  stratum: (field: string, value: string) => `${field}: ${value}`,
} as const;
