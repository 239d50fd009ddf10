import type { comparisonMethods, comparisonNotes } from '../../comparison/codes.js';
import type { EstimateMethod, EstimateNote } from '../../statistics/estimate.js';
import { type ReferenceKey, references } from './references.js';

/** A sentence without its full stop, and the works it rests on. */
export interface Cited {
  text: string;
  cites?: readonly ReferenceKey[];
}

/** What was done for an interval, by method code; only the codes met in the results are told. */
const byMethod: Readonly<Record<EstimateMethod | 'linear-model-patient-t', Cited>> = {
  'mean-patient-t': {
    text: 'Intervals of means use Student’s t with one degree of freedom fewer than patients; the variance is that of the sums over each patient’s eyes',
    cites: ['ying'],
  },
  'wilson-effective-n': {
    text: 'Intervals of shares are Wilson score intervals at the effective number of eyes, n divided by the design effect 1 + (Σm²/n − 1) · ICC, where m is the number of eyes of each patient and ICC the correlation of fellow eyes by analysis of variance, a negative one counted as 0',
    cites: ['wilson', 'newcombe'],
  },
  'exact-effective-n': {
    text: 'Intervals called exact are Clopper–Pearson intervals at the effective number of eyes',
    cites: ['clopper'],
  },
  'wilson-patients': {
    text: 'For a share of exactly 0 or 100 % the number of patients stands for n in the Wilson interval',
    cites: ['wilson'],
  },
  'exact-patients': {
    text: 'An exact interval about 0 or 100 % has the number of patients as n',
    cites: ['clopper'],
  },
  'log-patient-t': {
    text: 'Intervals of mean absolute errors are made on the logarithmic scale with the same patient variance',
  },
  'log-jackknife-t': {
    text: 'Intervals of the standard deviation and the root mean square are made on the logarithmic scale by the jackknife over patients',
  },
  'geometric-patient-t': {
    text: 'Intervals of geometric means are mean intervals of the logarithms, transformed back',
  },
  'rank-effective-n': {
    text: 'Intervals of medians are quantiles at the score limits of one half, at the effective number of eyes',
  },
  'constant-zero-mean': {
    text: 'The lens constant of a formula is the one at which the mean prediction error of the eyes with that lens is zero; its limits are the two constants at which the mean error is t times its standard error from patient sums away from zero',
    cites: ['wang'],
  },
  'straight-line-patient-t': {
    text: 'Straight lines are fitted by least squares over eyes; the variance is that of their influences summed by patient, with two degrees of freedom fewer than patients',
    cites: ['liang'],
  },
  'natural-spline-patient-t': {
    text: 'The prediction error over axial length and over keratometry is smoothed by a natural cubic spline with 3 degrees of freedom and knots at the terciles, below 60 patients by a straight line; its band is pointwise, the variance that of the influences summed by patient, with four degrees of freedom fewer than patients',
    cites: ['hastie', 'liang'],
  },
  'hotelling-patient': {
    text: 'Centroids were tested against 0, and their regions drawn, by Hotelling’s T² with the covariance of the centroid from patient sums',
    cites: ['johnson'],
  },
  'difference-patient-t': {
    text: 'Means are compared by their difference, with t; the variance is that of the sums over each patient’s eyes in both cohorts, so that fellow eyes in one cohort or in two are allowed for; degrees of freedom by Satterthwaite over the patients of one cohort, of the other, and of both',
    cites: ['satterthwaite'],
  },
  'ratio-jackknife-t': {
    text: 'Spreads are compared by the ratio of standard deviations, on the logarithmic scale, by the jackknife over the patients of both cohorts',
  },
  'placements-patient-t': {
    text: 'Skewed outcomes, and errors without their sign, are compared by the relative effect: the probability that an eye of the compared cohort has the larger value, ties counted half; its variance is that of the placements, summed by patient',
    cites: ['brunner'],
  },
  'shift-placements': {
    text: 'Beside it stands the shift, the median of all differences between an eye of one cohort and one of the other, whose limits are quantiles of these differences',
    cites: ['hodges'],
  },
  'square-and-add': {
    text: 'Shares are compared by their difference; its interval adds the squares of the two score intervals, with the correlation of the patient sums',
    cites: ['newcombeUnpaired'],
  },
  'newcombe-paired-phi-corrected': {
    text: 'Where each patient has one eye in each cohort, differences of shares have the paired score interval with corrected φ',
    cites: ['newcombePaired'],
  },
  'log-ratio-patient-t': {
    text: 'Ratios of shares, only where both are above zero, are made on the logarithmic scale with the variance from patient sums',
  },
  'centroid-difference': {
    text: 'Centroids are compared by the vector between them, its region and T² from the covariance of the patient sums of both cohorts, with the degrees of freedom of Krishnamoorthy and Yu',
    cites: ['krishnamoorthy'],
  },
  'linear-model-patient-t': {
    text: 'Adjusted differences are those of a linear model on the eyes, for shares too, with the variance of its influences summed by patient',
    cites: ['liang'],
  },
};

/** Tests that no interval stands for, by method code. */
const byTest: Readonly<Partial<Record<keyof typeof comparisonMethods, Cited>>> = {
  'fisher-mid-p': {
    text: 'p values of shares are Fisher’s with mid-p, each patient having one eye',
    cites: ['lydersen'],
  },
  'mcnemar-mid-p': {
    text: 'p values of shares are McNemar’s with mid-p, each patient having one eye in each cohort',
    cites: ['fagerland'],
  },
};

/** Textbook tests that the ones used are identical with in these data, by note. */
const byTextbook: Readonly<Partial<Record<EstimateNote | keyof typeof comparisonNotes, string>>> = {
  'textbook:welch': 'of means Welch’s t',
  'textbook:paired-t': 'of means the paired t',
  'textbook:brunner-munzel': 'of relative effects that of Brunner and Munzel',
  'textbook:hotelling': 'of centroids the paired Hotelling test',
  'textbook:krishnamoorthy-yu': 'of centroids that of Krishnamoorthy and Yu for unequal covariances',
};

const comparison = {
  cohorts: (compared: string, reference: string): string =>
    `Compared with ${reference}, the reference: ${compared}; differences are the compared cohort less the reference, ratios the compared over the reference`,
  design: (note: string) => note.replace(/\.$/, ''),
  textbook: (list: string): string =>
    `Since no patient has more than one eye in a cohort, tests are identical with their textbook forms: ${list}`,
  primary: (outcome: string, level: string): string =>
    `The primary outcome is ${outcome}; the verdict follows its ${level} interval and never p`,
  primaries: (outcomes: string, k: string, error: string, level: string): Cited => ({
    text: `Primary outcomes are ${outcomes}; ${k} intervals (outcomes × comparisons) share an error of ${error}, so that each has a level of ${level}, and the verdict follows the interval and never p; p values are adjusted by Holm’s method over the same ${k}`,
    cites: ['holm'],
  }),
  exploratory: (level: string): string => `All other outcomes are exploratory: ${level} intervals and no verdict`,
  margins: (list: string): string => `Margins, declared in audit.yaml: ${list}`,
  noMargin:
    'No margin was declared, so that an interval that holds no difference is told as “no difference shown” and never as equality',
  marginOf: (outcome: string, margin: string): string => `${outcome} ${margin}`,
  power:
    'Where the question stays open, the smallest difference detectable with 80 % power is given, from the variance found; the difference found is never used for planning',
  adjusted: (covariates: string): string => `Covariates of adjusted differences: ${covariates}`,
  baseline: {
    text: 'What eyes were before surgery is compared by standardised differences, without tests; beyond 0.1 they are marked as an imbalance',
    cites: ['austin'],
  },
  observed:
    'Cohorts were not drawn by lot: surgeon, machine, lens, time of surgery and time of follow-up are tabulated by cohort before any difference is',
} as const;

const formulas = {
  sameEyes: (list: string, primary: string): string =>
    `Formulas (${list}) are compared with ${primary} on the eyes that have both errors: the squared error less the mean of its formula, the absolute error, and the share within ±0.50 D; the mean over eyes of each difference is tested by t with the patient variance`,
  holm: { text: 'p values are adjusted by Holm’s method over the formulas', cites: ['holm'] },
  textbook: {
    text: 'Beside them stand the textbook forms for one eye a patient: Morgan–Pitman with HC4 standard error, and McNemar with mid-p',
    cites: ['pitman', 'cribari', 'fagerland'],
  },
} as const;

const sensitivity =
  'The headline numbers were repeated with one eye of each patient (the first operated of those eligible), without eyes that have an unusual value still to be confirmed, and, where lanes or vertex distances are recorded, by the policy on them that was not chosen';

const measures = {
  prediction_error: {
    text: 'The prediction error is the spherical equivalent achieved less the one predicted for the lens power implanted, in the spectacle plane; negative is more myopic than predicted',
    cites: ['langenbucher'],
  },
  target_error: {
    text: 'The target error is the spherical equivalent achieved less the one intended by the surgeon, and is kept apart from the prediction error',
  },
  prediction_error_centred: {
    text: 'The centred prediction error is less the mean of its lens model over the whole audit, for shares and absolute errors the mean without the eye’s own patient; models with fewer than 10 eyes are not centred, those with 10 to 29 provisionally',
    cites: ['wang'],
  },
  refractive_cylinder_after_recorded: {
    text: 'Shares of eyes by refractive cylinder count its magnitude as recorded',
  },
  cdva: {
    text: 'Acuities are averaged as logMAR, as recorded and not snapped to a line; a line is reached at its nominal tenth + 0.005 logMAR or better',
    cites: ['holladay1997'],
  },
  any_complication: { text: 'Complications are counted over all eyes operated; a blank entry is missing, not none' },
  any_complication_blank_none: {
    text: 'Complications are counted over all eyes operated; a blank entry counts as none, as audit.yaml declares for the export',
  },
} as const satisfies Readonly<Record<string, Cited>>;

/** English words: methods.md. */
export const methodsText = {
  references,
  byMethod,
  byTest,
  byTextbook,
  comparison,
  formulas,
  sensitivity,
  measures,
  heading: 'Statistical methods',
  referencesHeading: 'References',
  cautionHeading: 'What this report is, and is not',
  fromMemory: 'from memory: check before printing',
  audit: (eyes: string, patients: string, both: string) =>
    `${eyes} eyes of ${patients} patients were operated; ${both} patients had both eyes operated`,
  eligible: (eyes: string) => `${eyes} eyes were eligible for refraction, astigmatism and acuity`,
  excluded: (reasons: string) => `Excluded, in this order: ${reasons}`,
  eyesPerPatient: {
    both: 'Both eyes of a patient were used',
    first: 'One eye of each patient was used, the first operated',
    right: 'Right eyes only were used',
    left: 'Left eyes only were used',
    random: 'One eye of each patient was used, chosen by a hash of seed, patient and eye',
  },
  outcome: (visits: string) =>
    `The outcome is that of the visit ${visits}: the examination with a refraction nearest the middle of the window`,
  visitWindow: (name: string, from: string, to: string) => `“${name}” (days ${from} to ${to} after surgery)`,
  visitLabelled: (name: string) => `“${name}” (by its label)`,
  planned: 'Predictions are those recorded with the operation',
  formula: (name: string) => `Predictions are those of ${name}`,
  vectors: (vertex: string): Cited => ({
    text: `Astigmatism is analysed as doubled-angle vectors at the corneal plane, magnitude at the steep meridian; refractions were taken there meridian by meridian, at ${vertex}; no left eye was mirrored`,
    cites: ['holladay1998', 'holladay2001'],
  }),
  lowVision: (fingers: string, hand: string) =>
    `Counting fingers entered means as ${fingers} and hand movements as ${hand} logMAR; light perception and none never did`,
  estimand: (level: string): Cited => ({
    text: `All estimates are over eyes; intervals are two-sided at ${level} and allow for the correlation of a patient’s eyes`,
    cites: ['glynn'],
  }),
  iccFromAll:
    'Where fewer than 5 patients of a group have both eyes in it, the correlation of fellow eyes is that of the whole audit',
  iccIdentical:
    'Fewer than 5 patients have both eyes in the audit, so that for shares fellow eyes are taken as identical',
  smallSamples: 'With fewer than 5 patients no interval is given; estimates from 5 to 9 patients are marked',
  conventions: {
    text: 'Standard deviations have the divisor n − 1; quantiles are of type 7; a limit itself counts as within, magnitudes being compared after rounding to 0.000001',
    cites: ['hyndman'],
  },
  program:
    'The analysis was made with halfdiopter; its version, all settings and the SHA-256 of every file read stand in manifest.json',
  rounding: 'Numbers are rounded once, half away from zero, when they are typeset',
  caution: [
    'This report looks back at operations that are done. It is no lens-power calculator and no medical device, and is not meant for choosing the treatment of any patient: that is for the treating practitioner to decide.',
    'Local rules on audit, research and data protection apply before it is shared. De-identification of the data is the duty of those who supply them; the checks made on reading are a net, not a guarantee.',
  ],
} as const;
