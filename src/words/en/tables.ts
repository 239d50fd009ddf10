import { astigmatism } from './astigmatism.js';
import { comparison } from './comparison.js';
import { followUp, followUpTitles } from './follow-up.js';
import { methodsText } from './methods-text.js';
import { outcomes as safety } from './outcomes.js';
import { quantity } from './quantity.js';
import { recomputed } from './recomputed.js';
import { reportText } from './report-text.js';
import { standing } from './standing.js';
import { tableNotes } from './table-notes.js';
import { vectors } from './vectors.js';

/** Titles of the published tables; `visit` is the outcome visit by name. */
const titles = {
  'eye-flow': () => 'Eye flow: from eyes operated to eyes analysed (operated eyes)',
  baseline: () => 'Baseline characteristics (eligible eyes)',
  'refractive-accuracy': (visit: string) =>
    `Refractive accuracy at ${visit}: error of the spherical equivalent, spectacle plane (eligible eyes)`,
  'accuracy-by-subgroup': (visit: string, error: string) =>
    `${error} by subgroup at ${visit}: spherical equivalent, spectacle plane (eligible eyes)`,
  'residual-cylinder': (visit: string) => `Cylinder before surgery and at ${visit} (eligible eyes)`,
  'double-angle-summary': (visit: string) =>
    `Astigmatism as vectors, before surgery and at ${visit}, corneal plane (eligible eyes)`,
  'visual-acuity': (visit: string) => `Visual acuity before surgery and at ${visit} (eligible eyes)`,
  formulas: (visit: string, primary: string) =>
    `Formulas on the same eyes at ${visit}, each against ${primary} (eligible eyes)`,
  'formulas-by-band': (visit: string, primary: string) =>
    `Formulas on the same eyes by axial length and keratometry at ${visit}, each against ${primary} (eligible eyes)`,
  confounding: (field: string) => `What goes together with the cohorts: ${field} (eligible eyes)`,
  comparison: (visit: string, field: string, cohorts: string, unlike: string) =>
    `${field}: ${cohorts} at ${visit} (eligible eyes)${unlike === '' ? '' : `; cohorts not alike in ${unlike}`}`,
  ...astigmatism.titles,
  ...safety.titles,
  sensitivity: (visit: string) => `Headline numbers at ${visit} looked at in other ways`,
  ...followUpTitles,
} as const;

/** Row labels. Units stand in the label of the block; brackets hold intervals unless the label says otherwise. */
const rows = {
  eyes: 'Eyes (missing)',
  mean: 'Mean',
  meanSd: 'Mean (SD)',
  sd: 'SD',
  median: 'Median',
  medianRange: 'Median (range)',
  meanAbsolute: 'Mean absolute error',
  medianAbsolute: 'Median absolute error',
  rootMeanSquare: 'Root mean square',
  range: 'Range',
  withinError: (limit: string, unit = 'D') => `Within ±${quantity(limit, unit)}, n/N, %`,
  withinMagnitude: (limit: string, unit = 'D') => `≤ ${quantity(limit, unit)}, n/N, %`,
  atOrBetter: (feet: string, metres: string) => `${feet} (${metres}) or better, n/N, %`,
  snellen: 'Snellen equivalent of the mean',
  substituted: 'Low vision entered as logMAR, eyes',
  centroid: 'Centroid, D @ steep meridian in degrees',
  sdX: 'SD of x, D',
  sdY: 'SD of y, D',
  covariance: 'Covariance of x and y, D²',
  meanMagnitude: 'Mean magnitude, D',
  centroidRegion: (level: string) => `${level} region of the centroid: semi-axes, D`,
  dataRegion: (level: string) => `Region expected to hold the next eye (${level}): semi-axes, D`,
  insideDataRegion: 'Eyes really inside that region, n/N, %',
  hotelling: 'Centroid against 0: T²',
  p: 'Centroid against 0: p',
} as const;

/** Blocks: what is measured, in which unit, in which plane, on which eyes. */
const blocks = {
  prediction: 'Prediction error, D (achieved − predicted)',
  centred: 'Prediction error less the mean of its lens model, D',
  target: 'Target error, D (achieved − intended by the surgeon)',
  formula: (name: string) => `Prediction error, ${name}, D (achieved − predicted)`,
  predictionShort: 'Prediction error',
  targetShort: 'Target error',
  cornealBefore: vectors.named.corneal_cylinder_before.block,
  refractiveAfter: vectors.named.refractive_cylinder_after.block,
  refractiveRecorded: 'Refractive cylinder after surgery, as recorded (spectacle plane)',
  udva: 'Uncorrected distance acuity after surgery, logMAR (distance-target eyes)',
  udva_before: 'Uncorrected distance acuity before surgery, logMAR (distance-target eyes)',
  cdva: 'Corrected distance acuity after surgery, logMAR',
  cdva_before: 'Corrected distance acuity before surgery, logMAR',
} as const;

/** Outcomes that cohorts are compared by: as a block of rows, and in a few words. */
const outcomes: Readonly<Record<string, { block: string; name: string }>> = {
  spherical_equivalent: { block: 'Spherical equivalent after surgery, D', name: 'Spherical equivalent' },
  prediction_error: { block: blocks.prediction, name: blocks.predictionShort },
  prediction_error_centred: { block: blocks.centred, name: 'Centred prediction error' },
  target_error: { block: blocks.target, name: blocks.targetShort },
  refractive_cylinder_after_recorded: { block: blocks.refractiveRecorded, name: 'Recorded cylinder' },
  refractive_cylinder_after: { block: blocks.refractiveAfter, name: 'Refractive cylinder' },
  ...astigmatism.outcomes,
  cdva: { block: blocks.cdva, name: 'Corrected acuity' },
  udva: { block: blocks.udva, name: 'Uncorrected acuity' },
  ...safety.compared,
  any_complication: { block: 'Complication during surgery (operated eyes)', name: 'Complication during surgery' },
};

const baseline = {
  patients: 'Patients',
  age: 'Age at surgery, per patient, years',
  female: 'Female, per patient, n/N, %',
  right_eye: 'Right eyes, n/N, %',
  axial_length: 'Axial length, mm',
  k_mean_before: 'Mean keratometry, D (index 1.3375, corneal plane)',
  corneal_cylinder_magnitude_before: 'Corneal cylinder, D (keratometry, corneal plane)',
  lens_power: 'Lens power, D (lens plane)',
  toric: 'Toric lens, n/N, %',
  cdva_before: 'Corrected distance acuity, logMAR',
  udva_before: 'Uncorrected distance acuity, logMAR (distance-target eyes)',
} as const;

/** The same within a sentence. */
const missingNames = {
  age: 'age',
  female: 'sex',
  right_eye: 'side',
  axial_length: 'axial length',
  k_mean_before: 'keratometry',
  corneal_cylinder_magnitude_before: 'corneal cylinder',
  lens_power: 'lens power',
  toric: 'lens cylinder',
  cdva_before: 'corrected acuity',
  udva_before: 'uncorrected acuity',
} as const;

const flow = {
  operated: 'Eyes operated',
  patients: 'Patients operated',
  bothEyes: 'Patients with both eyes operated',
  eligible: 'Eligible eyes',
  due: 'Outcome visit due',
  outcomeKnown: 'Outcome known, n/N due, %',
  analysed: 'Analysed',
  excluded: (reason: string) => `Excluded: ${reason}`,
  notAnalysed: (reason: string) => `Not analysed: ${reason}`,
  families: {
    safety: 'Complications (operated eyes)',
    refraction: 'Spherical equivalent (eligible eyes)',
    astigmatism: 'Astigmatism as a vector (eligible eyes)',
    corrected: 'Corrected acuity (eligible eyes)',
    uncorrected: 'Uncorrected acuity (eligible, distance-target eyes)',
  },
  /** The same within a sentence. */
  names: {
    refraction: 'spherical equivalent',
    astigmatism: 'astigmatism as a vector',
    cornea: 'induced astigmatism',
    toric: 'toric lenses',
    corrected: 'corrected acuity',
    uncorrected: 'uncorrected acuity',
    ...safety.eyeFlow.names,
  },
  reasons: {
    ...safety.eyeFlow.reasons,
    one_eye_rule: 'fellow eye chosen, one eye per patient',
    near_target: 'not aimed at distance',
    not_yet_due: 'visit not yet due',
    no_visit: 'no examination at the visit',
    not_recorded: 'not recorded',
    set_aside: 'recorded, but set aside as impossible',
    no_same_device: 'no keratometry before surgery by the same device',
    not_toric: 'lens without cylinder',
    no_prediction: 'neither prediction nor target',
  },
} as const;

const fields: Readonly<Record<string, string>> = {
  axial_length: 'Axial length, mm',
  cohort: 'Cohort',
  ...astigmatism.fields,
  ...safety.fields,
  k_mean: 'Mean keratometry, D',
  lens_model: 'Lens model',
  machine: 'Machine',
  site: 'Site',
  surgeon: 'Surgeon',
  technique: 'Technique',
  year: 'Year of surgery',
};

/** English words: tables, and the texts that stand around them. */
export const tables = {
  recomputed,
  safety,
  standing,
  titles,
  rows,
  blocks,
  vectors,
  astigmatism,
  outcomes,
  complicationOutcome: (name: string) => ({
    block: `${safety.complication(name)} (operated eyes)`,
    name: safety.complication(name),
  }),
  formulaOutcome: (formula: string) => ({
    block: blocks.formula(formula),
    name: `${blocks.predictionShort}, ${formula}`,
  }),
  baseline,
  comparison,
  missingNames,
  followUp,
  flow,
  fields,
  caption: (number: number, title: string) => `Table ${number}. ${title}`,
  figureCaption: (number: number, title: string) => `Figure ${number}. ${title}`,
  withInterval: (label: string, level: string) => `${label} (${level} CI)`,
  headCount: (text: string, n: string) => `${text} (n = ${n})`,
  statistic: 'Statistic',
  characteristic: 'Characteristic',
  standardised: 'Standardised difference',
  standardisedOf: (compared: string, reference: string) => `Standardised difference, ${compared} − ${reference}`,
  stage: 'Stage',
  subgroup: 'Subgroup',
  allEyes: 'All eyes',
  missingGroup: 'not recorded',
  below: (edge: string) => `< ${edge}`,
  above: (edge: string) => `> ${edge}`,
  atLeast: (edge: string) => `≥ ${edge}`,
  fromToBelow: (low: string, high: string) => `${low} to < ${high}`,
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  or: ', else ',
  orAnother: ' or ',
  to: 'to',
  percent: '%',
  notEstimable: 'not estimable',
  notShown: 'not shown',
  notThisPlane: '–',
  notes: tableNotes,
  text: reportText,
  methods: methodsText,
} as const;
