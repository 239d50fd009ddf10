import type { EstimateMethod } from '../../statistics/estimate.js';

/** A work cited; `memory`: its details were not read again and have to be checked before they are printed. */
interface Reference {
  text: string;
  memory?: true;
}

/** Works that the methods paragraph cites, by key. */
const references = {
  clopper: {
    text: 'Clopper CJ, Pearson ES. The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 1934;26:404–413',
    memory: true,
  },
  glynn: { text: 'Glynn RJ, Rosner B. Ophthalmic Epidemiol 2012;19:159–165 (correlated eyes)' },
  holladay1997: { text: 'Holladay JT. J Refract Surg 1997;13:388–391 (averages of visual acuity)' },
  holladay1998: {
    text: 'Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65 (doubled-angle vectors)',
  },
  holladay2001: {
    text: 'Holladay JT, Moran JR, Kezirian GM. J Cataract Refract Surg 2001;27:61–79 (refractions at the corneal plane)',
  },
  hyndman: {
    text: 'Hyndman RJ, Fan Y. Sample quantiles in statistical packages. Am Stat 1996;50:361–365',
    memory: true,
  },
  johnson: {
    text: 'Johnson RA, Wichern DW. Applied multivariate statistical analysis, chapter 5 (Hotelling’s T²). Prentice Hall',
    memory: true,
  },
  langenbucher: { text: 'Langenbucher A et al. PLoS One 2022;17:e0267352 (sign of the prediction error)' },
  newcombe: { text: 'Newcombe RG. Stat Med 1998;17:857–872 (intervals of a single share)' },
  wang: { text: 'Wang L, Koch DD, Hill W, Abulafia A. J Cataract Refract Surg 2017;43:999–1002 (centred errors)' },
  wilson: {
    text: 'Wilson EB. Probable inference, the law of succession, and statistical inference. J Am Stat Assoc 1927;22:209–212',
    memory: true,
  },
  ying: { text: 'Ying GS et al. Ophthalmic Epidemiol 2017;24:130–140 (linear regression of correlated eyes)' },
} as const satisfies Readonly<Record<string, Reference>>;

export type ReferenceKey = keyof typeof references;

/** A sentence without its full stop, and the works it rests on. */
export interface Cited {
  text: string;
  cites?: readonly ReferenceKey[];
}

/** What was done for an interval, by method code; only the codes met in the results are told. */
const byMethod: Readonly<Record<EstimateMethod, Cited>> = {
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
    text: 'For a share of exactly 0 or 100 % the number of patients stands for n in the exact interval',
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
  'hotelling-patient': {
    text: 'Centroids were tested against 0, and their regions drawn, by Hotelling’s T² with the covariance of the centroid from patient sums',
    cites: ['johnson'],
  },
  'difference-patient-t': {
    text: 'Differences of means between cohorts use t with the variance from the patient sums of both cohorts and Satterthwaite’s degrees of freedom',
  },
  'ratio-jackknife-t': {
    text: 'Ratios of standard deviations are made on the logarithmic scale by the jackknife over the patients of both cohorts',
  },
  'placements-patient-t': {
    text: 'Skewed outcomes are compared by the relative effect (the probability that an eye of one cohort has the larger value), with the variance of the placements from patient sums',
  },
  'shift-placements': { text: 'The shift between cohorts is the median of all differences between their eyes' },
  'square-and-add': {
    text: 'Differences of shares are intervals by square-and-add of two score intervals, with the correlation of the patient sums',
  },
  'newcombe-paired-phi-corrected': {
    text: 'In fellow-eye designs differences of shares use the paired square-and-add interval with corrected φ',
  },
  'log-ratio-patient-t': {
    text: 'Ratios of shares are made on the logarithmic scale with the variance from the patient sums of both cohorts',
  },
  'centroid-difference': {
    text: 'Differences of centroids are tested with the covariance from the patient sums of both cohorts',
  },
};

const measures = {
  prediction_error: {
    text: 'The prediction error is the spherical equivalent achieved less the one predicted for the lens power implanted, in the spectacle plane; negative is more myopic than predicted',
    cites: ['langenbucher'],
  },
  target_error: {
    text: 'The target error is the spherical equivalent achieved less the one intended by the surgeon, and is kept apart from the prediction error',
  },
  prediction_error_centred: {
    text: 'The centred prediction error is less the mean of its lens model over the whole audit, for shares and absolute errors the mean without the eye’s own patient; models with fewer than 10 eyes are not centred',
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
} as const satisfies Readonly<Record<string, Cited>>;

/** English words: methods.md. */
export const methodsText = {
  references,
  byMethod,
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
