import type { comparisonMethods, comparisonNotes } from '../../comparison/codes.js';
import type { EstimateMethod, EstimateNote } from '../../statistics/estimate.js';
import { outcomes } from './outcomes.js';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Notes that are given to rows and not to estimates. */
type AnalysisNote = 'not-estimable:light-perception' | 'suppressed' | 'several-machines';
type ComparisonMethod = keyof typeof comparisonMethods;
type ComparisonNote = keyof typeof comparisonNotes;

/** Footnotes of marks: what a note of a results row means to a reader. */
const marked = {
  'not-estimable:no-eyes': 'No eye has this value.',
  'not-estimable:one-eye': 'Not estimable: one eye has no spread.',
  'not-estimable:few-patients': 'Fewer than 5 patients: no interval is given.',
  'not-estimable:no-spread': 'All values are equal: no interval on the logarithmic scale.',
  'not-estimable:one-patient-varies': 'Without one patient all values are equal: no interval.',
  'not-estimable:complete-separation': 'Not estimable: no value of one cohort lies among those of the other.',
  'not-estimable:zero-share': 'Not estimable: a ratio of shares needs both above zero.',
  'not-estimable:light-perception': 'Light perception or none: worse than every value, and without a value of its own.',
  'not-estimable:zero-vector': 'A vector of zero has no axis.',
  'not-estimable:few-eyes': 'Fewer than 10 eyes: no constant is sought.',
  'not-estimable:no-constant': 'Not estimable: no constant brings the mean error to zero.',
  'not-estimable:no-constant-limit': 'No interval: no constant brings the mean error as far from zero.',
  'provisional:constant': 'Provisional: fewer than 30 eyes.',
  'few-patients': 'Few patients (5 to 9): read with care.',
  'heavy-tails':
    'Heavy tails (excess kurtosis above 2): with tails this heavy, simulated coverage was 87–94 %, not 95 %.',
  'degenerate:points-on-a-line': 'All points lie on one line: the region is a segment, and there is no test.',
  'degenerate:identical-points': 'All points are equal: the region is a point, and there is no test.',
  'degenerate:patient-sums': 'The sums over patients lie on one line: there is no test.',
  'several-machines': outcomes.notes.severalMachines,
  suppressed: 'Not shown: too few eyes to be published.',
  'design:independent': 'Of the eyes with this value no patient has one in both cohorts.',
  'design:fellow-eye': 'Of the eyes with this value each patient has one in each cohort.',
  'design:mixed': 'Of the eyes with this value some patients have one in both cohorts.',
  'not-estimable:few-patients-for-covariates':
    'Not estimable: fewer than 5 patients more than the model has covariates.',
  imbalance: 'Imbalance: a standardised difference beyond 0.1.',
  'no-overlap': 'Nothing in common.',
  uneven: 'Less than 75 % in common.',
  learning: 'A surgeon’s first eyes with it are among them.',
  'not-estimable:no-order': 'Not estimable: the order of operations is not known.',
} as const satisfies Partial<Record<EstimateNote | AnalysisNote | ComparisonNote, string>>;

/** Notes that concern a method rather than a value: a footnote without a mark. */
const unmarked = {
  'icc:whole-audit':
    'Where fewer than 5 patients have both eyes in a group, the correlation of fellow eyes is that of the whole audit.',
  'icc:fellow-eyes-identical':
    'Fewer than 5 patients have both eyes in the audit: for shares, fellow eyes were taken as identical.',
  'textbook:welch': 'Each patient has one eye: the tests of means are identical with Welch’s t.',
  'textbook:paired-t': 'Each patient has one eye in each cohort: the tests of means are identical with the paired t.',
  'textbook:brunner-munzel':
    'Each patient has one eye: the tests of relative effects are identical with that of Brunner and Munzel.',
  'textbook:hotelling':
    'Each patient has one eye in each cohort: the test of centroids is identical with the paired Hotelling test.',
  'textbook:krishnamoorthy-yu':
    'Each patient has one eye: the test of centroids is identical with that of Krishnamoorthy and Yu for unequal covariances.',
} as const satisfies Partial<Record<EstimateNote | ComparisonNote, string>>;

/** How an interval was made, in the words of a footnote. */
const intervals: Readonly<
  Record<EstimateMethod | 'linear-model-patient-t' | 'former-report' | 'square-and-add-years', string>
> = {
  'mean-patient-t': 'means by t with the variance from patient sums',
  'wilson-effective-n': 'shares by the Wilson score method at the effective number of eyes',
  'exact-effective-n': 'exact shares by Clopper–Pearson at the effective number of eyes',
  'wilson-patients': 'shares of exactly 0 or 100 % by the Wilson score method with the number of patients as n',
  'exact-patients': 'exact shares of 0 or 100 % by Clopper–Pearson with the number of patients as n',
  'log-patient-t': 'mean absolute errors on the logarithmic scale with the variance from patient sums',
  'log-jackknife-t': 'SD and root mean square on the logarithmic scale by the jackknife over patients',
  'geometric-patient-t': 'geometric means by t of the logarithms with the variance from patient sums',
  'rank-effective-n': 'medians by ranks at the effective number of eyes',
  'constant-zero-mean': 'lens constants by the two constants at which the mean error reaches its t limits',
  'straight-line-patient-t': 'lines by least squares with the variance from influences summed by patient',
  'natural-spline-patient-t': 'curves by natural cubic splines with the variance from influences summed by patient',
  'hotelling-patient': 'centroids by Hotelling’s T² with the covariance from patient sums',
  'difference-patient-t': 'differences of means by t with the variance from the patient sums of both cohorts',
  'ratio-jackknife-t': 'ratios of spread by the jackknife over the patients of both cohorts',
  'placements-patient-t': 'relative effects by placements with the variance from patient sums',
  'shift-placements': 'shifts by the placement limits of one half',
  'square-and-add':
    'differences of shares by square-and-add of two score intervals (with about 20 patients wider than need be: 95 % intervals held the true difference in up to 98 % of simulations)',
  'newcombe-paired-phi-corrected':
    'paired differences of shares by Newcombe’s method with corrected φ (with about 20 patients wider than need be: 95 % intervals held the true difference in up to 98 % of simulations)',
  'log-ratio-patient-t': 'ratios of shares on the logarithmic scale with the variance from patient sums',
  'centroid-difference': 'differences of centroids with the covariance from the patient sums of both cohorts',
  'linear-model-patient-t':
    'adjusted differences by a linear model with the variance from its influences summed by patient',
  'former-report': 'numbers of the former report as it gave them',
  'square-and-add-years': 'differences between the two years by square-and-add of their intervals',
};

const satterthwaite = 't: the estimate over its standard error from patient sums, degrees of freedom by Satterthwaite';

/** Tests behind p, by method. */
const tests: Readonly<Partial<Record<EstimateMethod | ComparisonMethod, string>>> = {
  'mean-patient-t': 't: the mean over its standard error from patient sums, degrees of freedom one fewer than patients',
  'difference-patient-t': satterthwaite,
  'ratio-jackknife-t': satterthwaite,
  'placements-patient-t': satterthwaite,
  'log-ratio-patient-t': satterthwaite,
  'linear-model-patient-t': satterthwaite,
  'centroid-difference': 'F: T² of two centroids from patient sums, degrees of freedom by Krishnamoorthy and Yu',
  'fisher-mid-p': 'Fisher’s exact test with mid-p',
  'mcnemar-mid-p': 'McNemar’s exact test with mid-p',
};

/** Abbreviations as they stand in a table, in the order in which footnotes spell them out. */
const abbreviations = {
  ci: { pattern: /\bCI\b/, text: 'CI, confidence interval' },
  dioptre: { pattern: /\bD\b/, text: 'D, dioptre' },
  logMAR: { pattern: /\blogMAR\b/, text: 'logMAR, logarithm of the minimum angle of resolution' },
  ratio: { pattern: /\bn\/N\b/, text: 'n/N, eyes with it of eyes counted' },
  sd: { pattern: /\bSD\b/, text: 'SD, standard deviation (divisor n − 1)' },
} as const;

const refraction = {
  sign: (lane: 'as-recorded' | 'to-infinity') =>
    `Negative: more myopic than predicted or intended. Spectacle plane; sphere + half the cylinder${lane === 'as-recorded' ? ', as recorded' : ''}.`,
  centred:
    'Centred: less the mean prediction error of its lens model over the whole audit; shares and absolute errors use means without the eye’s own patient. Secondary, and never measured against a benchmark.',
  provisional: (models: string) => `Provisional, centred by the mean of 10 to 29 eyes: ${models}.`,
  notCentred: (models: string) => `Not centred, fewer than 10 eyes or no lens recorded: ${models}.`,
  modelEyes: (model: string, eyes: string) => `${model} ${eyes}`,
  thresholds: 'A limit itself counts as within; magnitudes are compared at 0.000001 D.',
  planned: 'Prediction: the one recorded with the operation.',
  formula: (name: string) => `Prediction: ${name}.`,
} as const;

const astigmatism = {
  plane: (vertex: string) =>
    `Refraction taken to the corneal plane meridian by meridian, at ${vertex}. No left eye is mirrored.`,
  doubled:
    'x = C cos 2a, y = C sin 2a, a the steep meridian: negative x is with the rule, positive x against the rule.',
  regions:
    'The region of the next eye supposes a normal cloud; the share really inside shows how far it is one. Semi-axes: longer × shorter.',
  apart:
    'Induced vectors are given for right and left eyes apart, and pooled in the frame of the incision only (table of induced astigmatism). Mean magnitude is not the length of the centroid: it holds the noise of measurement.',
  recorded:
    'Magnitudes after surgery are those recorded, spectacle plane; vectors are at the corneal plane, and the two are not comparable eye by eye.',
  otherPlane: '–: not part of this column.',
} as const;

const acuity = {
  distance: (low: string, high: string, unknown: string) =>
    `Distance-target eyes: intended spherical equivalent from ${low} to ${high} D; eyes without an intended value (${unknown}) count as distance.`,
  lowVision: (fingers: string, hand: string) =>
    `Counting fingers (${fingers}) and hand movements (${hand}) enter means as logMAR; light perception and none never do, the median uses their rank.`,
  mean: 'Means are of logMAR as recorded, not snapped to a line, and are then turned into a fraction.',
  lines: 'A line is reached at its nominal tenth + 0.005 logMAR or better.',
} as const;

const flow = {
  zero: 'Reasons that no eye had are not shown. Of several reasons an eye has the first, in the order of the list.',
  due: 'Due: the window of the outcome visit had closed when the data were exported.',
  noCohort: 'All eyes: those that belong to no cohort are counted as well.',
} as const;

/** English words: footnotes of tables. */
export const tableNotes = {
  marked,
  unmarked,
  intervals,
  tests,
  testsLead: (list: string) => `Tests (two-sided): ${list}.`,
  collinear: (covariate: string) =>
    `Not estimable: ${covariate} follows from the cohort and the other covariates, so that nothing is left to compare.`,
  imbalance:
    'Standardised difference: of means, or shares, in standard deviations; no test, since cohorts differ in what they are, by chance or not.',
  intervalsLead: (level: string, list: string) => `${level} intervals allow for both eyes of a patient: ${list}.`,
  abbreviations,
  refraction,
  astigmatism,
  acuity,
  flow,
  ages: 'Ages above 89 are counted as 90.',
  vertexRecorded: 'the vertex distance recorded',
  vertexAssumed: (vertex: string, eyes: string) =>
    `the vertex distance recorded, in ${eyes} eyes without one at ${vertex} mm`,
  perEye: 'Age and sex are counted once a patient, all else once an eye.',
  withoutCohort: (eyes: string, one: boolean) =>
    one
      ? 'One eye belongs to no cohort shown: it is counted in all eyes only.'
      : `${eyes} eyes belong to no cohort shown: they are counted in all eyes only.`,
  independent: (list: string) => `Shares of exactly 0 or 100 %, were all eyes independent: ${list}.`,
  independentOf: (eyes: string, limits: string) => `${eyes} eyes, ${limits} %`,
  correlation: (list: string) =>
    `Fellow eyes, intraclass correlation and design effect (that of the variance of a mean over eyes): ${list}.`,
  correlationOf: (outcome: string, list: string) => `${outcome}: ${list}`,
  correlationIn: (column: string, icc: string, effect: string) => `${column} ${icc} and ${effect}`,
  designEffectIn: (column: string, effect: string) => `${column} design effect ${effect}`,
  missing: (list: string) => `Missing: ${list}.`,
  missingOf: (name: string, all: string, cohorts: string) => `${name} ${all}${cohorts === '' ? '' : ` (${cohorts})`}`,
  countIn: (column: string, n: string) => `${column} ${n}`,
  visit: (visit: string) => `Outcome visit: ${visit}.`,
  followUp: (what: string, list: string) => `Follow-up in days, ${what}, median (range): ${list}.`,
  followUpOf: (column: string, median: string, low: string, high: string, eyes: string, patients: string) =>
    `${column} ${median} (${low} to ${high}), ${eyes} eyes of ${patients} patients`,
  otherDay: (n: string) =>
    `Values taken from another day of the visit than its refraction, all measures together: ${n}.`,
  followUpUnknown: (column: string) => `${column} not given`,
  notAnalysed: (operated: string, what: string, list: string) =>
    `${capital(what)}: of ${operated} eyes operated these are left out: ${list}.`,
  allAnalysed: (operated: string, what: string) => `${capital(what)}: all ${operated} eyes operated.`,
} as const;
