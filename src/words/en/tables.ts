import { methodsText } from './methods-text.js';
import { reportText } from './report-text.js';
import { tableNotes } from './table-notes.js';

/** Titles of the published tables; `visit` is the outcome visit by name. */
const titles = {
  'eye-flow': () => 'Eye flow: from eyes operated to eyes analysed (operated eyes)',
  baseline: () => 'Baseline characteristics (eligible eyes)',
  'refractive-accuracy': (visit: string) =>
    `Refractive accuracy at ${visit}: error of the spherical equivalent, spectacle plane (eligible eyes)`,
  'accuracy-by-subgroup': (visit: string, error: string) =>
    `${error} at ${visit} by subgroup: spherical equivalent, spectacle plane (eligible eyes)`,
  'residual-cylinder': (visit: string) => `Cylinder before surgery and at ${visit} (eligible eyes)`,
  'double-angle-summary': (visit: string) =>
    `Astigmatism as vectors, before surgery and at ${visit}, corneal plane (eligible eyes)`,
  'visual-acuity': (visit: string) => `Visual acuity before surgery and at ${visit} (eligible eyes)`,
} as const;

/** Row and block labels. Units stand in the label of the block. */
const rows = {
  eyes: 'Eyes (missing)',
  mean: 'Mean',
  meanInterval: (level: string) => `Mean (${level} CI)`,
  meanSd: 'Mean (SD)',
  sd: 'SD',
  sdInterval: (level: string) => `SD (${level} CI)`,
  median: 'Median',
  medianInterval: (level: string) => `Median (${level} CI)`,
  medianRange: 'Median (range)',
  meanAbsolute: (level: string) => `Mean absolute error (${level} CI)`,
  medianAbsolute: (level: string) => `Median absolute error (${level} CI)`,
  rootMeanSquare: (level: string) => `Root mean square (${level} CI)`,
  range: 'Range',
  withinError: (limit: string, level: string) => `Within ±${limit} D, n/N, % (${level} CI)`,
  withinMagnitude: (limit: string, level: string) => `≤ ${limit} D, n/N, % (${level} CI)`,
  atOrBetter: (feet: string, metres: string, level: string) => `${feet} (${metres}) or better, n/N, % (${level} CI)`,
  snellen: 'Snellen equivalent of the mean',
  substituted: 'Low vision entered as logMAR, eyes',
  centroid: 'Centroid, D @ steep meridian in degrees',
  sdX: 'SD of x, D',
  sdY: 'SD of y, D',
  covariance: 'Covariance of x and y, D²',
  meanMagnitude: 'Mean magnitude, D',
  meanMagnitudeInterval: (level: string) => `Mean magnitude, D (${level} CI)`,
  centroidRegion: (level: string) => `${level} region of the centroid: semi-axes, D`,
  dataRegion: (level: string) => `Region expected to hold the next eye (${level}): semi-axes, D`,
  insideDataRegion: 'Eyes really inside that region',
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
  cornealBefore: 'Corneal cylinder before surgery (keratometry, corneal plane)',
  refractiveAfter: 'Refractive cylinder after surgery (corneal plane)',
  refractiveRecorded: 'Refractive cylinder after surgery, as recorded (spectacle plane)',
  udva: 'Uncorrected distance acuity after surgery, logMAR (distance-target eyes)',
  udva_before: 'Uncorrected distance acuity before surgery, logMAR (distance-target eyes)',
  cdva: 'Corrected distance acuity after surgery, logMAR',
  cdva_before: 'Corrected distance acuity before surgery, logMAR',
} as const;

const baseline = {
  patients: 'Patients',
  age: 'Age at surgery, years (per patient)',
  female: 'Female, n/N, % (per patient)',
  right_eye: 'Right eyes, n/N, %',
  axial_length: 'Axial length, mm',
  k_mean_before: 'Mean keratometry, D (index 1.3375, corneal plane)',
  corneal_cylinder_magnitude_before: 'Corneal cylinder, D (keratometry, corneal plane)',
  lens_power: 'Lens power, D (lens plane)',
  toric: 'Toric lens, n/N, %',
  cdva_before: 'Corrected distance acuity, logMAR',
  udva_before: 'Uncorrected distance acuity, logMAR (distance-target eyes)',
} as const;

const flow = {
  operated: 'Eyes operated',
  patients: 'Patients operated',
  bothEyes: 'Patients with both eyes operated',
  eligible: 'Eligible eyes',
  due: 'Eligible eyes whose outcome visit was due',
  outcomeKnown: (level: string) => `Outcome known, n/N due, % (${level} CI)`,
  families: {
    safety: 'Analysed for complications (operated eyes)',
    refraction: 'Analysed for the spherical equivalent',
    astigmatism: 'Analysed for astigmatism as a vector',
    corrected: 'Analysed for corrected acuity',
    uncorrected: 'Analysed for uncorrected acuity (distance-target eyes)',
  },
  reasons: {
    one_eye_rule: 'Fellow eye chosen: one eye per patient',
    near_target: 'Not aimed at distance',
    not_yet_due: 'Visit not yet due',
    no_visit: 'No examination at the visit',
    not_recorded: 'Not recorded at the visit',
    set_aside: 'Recorded, but set aside as impossible',
    no_prediction: 'Neither prediction nor target',
  },
} as const;

const fields: Readonly<Record<string, string>> = {
  axial_length: 'Axial length, mm',
  k_mean: 'Mean keratometry, D',
  lens_model: 'Lens model',
  site: 'Site',
  surgeon: 'Surgeon',
  technique: 'Technique',
  year: 'Year of surgery',
};

/** English words: tables, and the texts that stand around them. */
export const tables = {
  titles,
  rows,
  blocks,
  baseline,
  flow,
  fields,
  caption: (number: number, title: string) => `Table ${number}. ${title}`,
  figureCaption: (number: number, title: string) => `Figure ${number}. ${title}`,
  headCount: (text: string, n: string) => `${text} (n = ${n})`,
  statistic: 'Statistic',
  characteristic: 'Characteristic',
  stage: 'Stage',
  subgroup: 'Subgroup',
  eyesHead: 'Eyes (missing)',
  allEyes: 'All eyes',
  missingGroup: 'not recorded',
  below: (edge: string) => `< ${edge}`,
  above: (edge: string) => `> ${edge}`,
  fromToBelow: (low: string, high: string) => `${low} to < ${high}`,
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  or: ', else ',
  to: 'to',
  percent: '%',
  ofEyes: (share: string, n: string) => `${share} % of ${n}`,
  notEstimable: 'not estimable',
  notThisPlane: '–',
  notes: tableNotes,
  text: reportText,
  methods: methodsText,
} as const;
