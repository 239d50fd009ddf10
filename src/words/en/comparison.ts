import type { Verdict } from '../../comparison/verdict.js';
import { quantity, unitName } from './quantity.js';

const patients = (n: string): string => `${n} ${n === '1' ? 'patient' : 'patients'}`;

/** What an interval allows to be said, in the words of the verdict table. */
const verdicts: Readonly<Record<Verdict, string>> = {
  better: 'better',
  worse: 'worse',
  'worse-within-margin': 'worse, but within the margin (non-inferior)',
  'worse-margin-not-excluded': 'worse, margin not excluded',
  'no-difference-shown': 'no difference shown (this is not evidence of equality)',
  equivalent: 'equivalent within the margin',
  'non-inferior': 'non-inferior',
  inconclusive: 'inconclusive',
  different: 'different',
  'different-within-margin': 'different, but within the margin',
};

/** The same as the answer to a question, `a` the reference and `b` what is compared with it. */
const answers: Readonly<Record<Verdict, (b: string, a: string) => string>> = {
  better: (b, a) => `${b} is better than ${a}`,
  worse: (b, a) => `${b} is worse than ${a}`,
  'worse-within-margin': (b, a) => `${b} is worse than ${a}, but within the margin (non-inferior)`,
  'worse-margin-not-excluded': (b, a) => `${b} is worse than ${a}, margin not excluded`,
  'no-difference-shown': (b, a) => `no difference shown between ${b} and ${a} (this is not evidence of equality)`,
  equivalent: (b, a) => `${b} is equivalent to ${a} within the margin`,
  'non-inferior': (b, a) => `${b} is non-inferior to ${a}`,
  inconclusive: (b, a) => `${b} against ${a} is inconclusive`,
  different: (b, a) => `${b} and ${a} are different`,
  'different-within-margin': (b, a) => `${b} and ${a} are different, but within the margin`,
};

/** Statistics of a comparison as row labels of its table. */
const statistics = {
  spread: 'SD (ratio)',
  effect: 'Relative effect',
  effectAbsolute: 'Absolute error: relative effect',
  shift: 'Median (shift)',
  shiftAbsolute: 'Median absolute error (shift)',
  share: 'Eyes with it, n/N, %',
  shareRatio: 'Eyes with it (ratio)',
  ratio: (share: string) => `${share} (ratio)`,
  adjusted: 'The same, adjusted',
  sameEyes: (eyes: string) => `The same, unadjusted, the ${eyes} eyes with all covariates`,
} as const;

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What stands behind the name of an outcome, for charts and sentences: 'Prediction error' + ' within ±0.50 D'. */
const brief = {
  mean: ', mean',
  spread: ', SD',
  effect: ', relative effect',
  shift: ', shift',
  withinError: (limit: string, unit: string) => ` within ±${quantity(limit, unit)}`,
  withinMagnitude: (limit: string, unit: string) => ` ≤ ${quantity(limit, unit)}`,
  atOrBetter: (feet: string, metres: string) => ` ${feet} (${metres}) or better`,
  share: '',
  ratio: ', ratio',
  centroid: ', centroid',
  absolute: (outcome: string) => `Absolute ${small(outcome)}`,
} as const;

const table = {
  outcome: 'Outcome',
  compared: 'Compared cohort',
  difference: 'Difference or ratio',
  differenceOf: (compared: string, reference: string) => `${compared} − ${reference}, or ratio`,
  test: 'Test',
  p: 'p',
  pAdjusted: 'p, adjusted (Holm)',
  against: (compared: string, reference: string) => `${compared} against ${reference}`,
  primary: (level: string, several: boolean) =>
    `Primary ${several ? 'outcomes' : 'outcome'} (${level} CI of the difference)`,
  unit: (statistic: string, unit: string) => `${statistic}, ${unitName(unit)}`,
  exploratory: (level: string) => `Exploratory outcomes, without verdict (${level} CI)`,
  counted: (share: string) => `${share}, n/N, %`,
  eyes: 'Eyes (missing)',
  eyesAndPatients: (eyes: string, n: string) => `${eyes} eyes of ${patients(n)}`,
  verdict: (compared: string) => `Verdict on ${compared}`,
  verdictMargin: (compared: string, margin: string) => `Verdict on ${compared}, margin ${margin}`,
  halfWidth: 'Half-width of the interval',
  detectable: 'Smallest difference detectable with 80 % power',
  needed: (difference: string) => `Eyes needed, both cohorts, for a difference of ${difference}`,
  neededMargin: (margin: string) => `Eyes needed, both cohorts, for the margin of ${margin}`,
  region: (vector: string, region: string) => `${vector}, region ${region}`,
  t: (df: string) => `t(${df})`,
  f: (df: string) => `F(2, ${df})`,
  tests: { 'fisher-mid-p': 'Fisher, mid-p', 'mcnemar-mid-p': 'McNemar, mid-p' },
} as const;

/** A declared margin or difference, in the unit of what it is declared for. */
const declared = {
  points: (value: string) => `${value} percentage points`,
  point: (value: string) => `${value} percentage point`,
  ratio: (value: string) => `a factor of ${value}`,
  unit: (value: string, unit: string) => (unit === '' ? value : `${value} ${unitName(unit)}`),
} as const;

const confounding = {
  characteristic: 'Characteristic',
  common: (compared: string, reference: string) => `${compared} against ${reference}`,
  mix: 'Mix in common, %',
  mixNote:
    'Mix in common: the smaller of the shares that a value has in the two cohorts, summed over the values; 100 % is the same mix.',
  years: 'Years with operations in both, of years',
  months: 'Months with operations in both, of months',
  time: 'Calendar time',
  patients: 'Patients',
  inBoth: 'In both cohorts',
  onlyIn: (cohort: string) => `Only in ${cohort}`,
  onlyCompared: 'Only in the compared cohort',
  followUp: (level: string) => `Follow-up, days: median (range); difference of means (${level} CI)`,
  ofAll: (common: string, all: string) => `${common} of ${all}`,
  /** What cohorts may be unlike in, within a sentence. */
  fields: { surgeon: 'surgeon', machine: 'machine', lens_model: 'lens model', year: 'year of surgery' } as Readonly<
    Record<string, string>
  >,
  inTime: 'months of surgery',
  inLearning: 'surgeons’ practice',
  inFollowUp: 'time of follow-up',
  early: 'Among a surgeon’s first 20 with it, taken up during the audit, n/N',
} as const;

/** What may be the reason for a difference instead of the cohort. */
const concerns = {
  none: (compared: string, reference: string, field: string) =>
    `${compared} and ${reference} have no ${field} in common: a difference between them may as well be one of ${field}, and no table can tell.`,
  uneven: (compared: string, reference: string, field: string, share: string) =>
    `${compared} and ${reference} are not alike in ${field} (${share} % of their mix is common): a difference between them may be one of ${field}.`,
  notInTime: (compared: string, reference: string, all: string, unit: string) =>
    `${compared} and ${reference} were never operated in the same ${unit} (${all} in all): a difference between them may be one of time.`,
  unevenTime: (compared: string, reference: string, common: string, all: string, unit: string) =>
    `${compared} and ${reference} were operated at different times (${common} of ${all} ${unit} have operations in both): a difference between them may be one of time.`,
  learning: (list: string) =>
    `Learning order: eyes are among the first 20 that their surgeon (the clinic, where surgeons are not recorded) did in a way taken up during the audit (${list}): a difference between cohorts may be one of practice.`,
  learningIn: (cohort: string, early: string, eyes: string) => `${cohort}: ${early} of ${eyes}`,
  followUp: (what: string, compared: string, reference: string, days: string) =>
    `Eyes were not seen equally long after surgery (${what}, mean of ${compared} less that of ${reference}: ${days} days): a difference between cohorts may be one of time since surgery.`,
  units: { months: { one: 'month', many: 'months' }, years: { one: 'year', many: 'years' } },
} as const;

const notes = {
  and: ' and ',
  observed: (title: string) =>
    `Cohorts of an audit are not drawn by lot: what goes together with them stands in the table “${title}”.`,
  adjustedFor: (covariates: string) =>
    `Adjusted for ${covariates}: linear model on the eyes, for shares as well; the unadjusted difference stands above it.`,
  cohortLevel: (level: string) => `Estimates of each cohort have ${level} intervals.`,
  differences:
    'Differences are the compared cohort less the reference, of shares in percentage points; ratios the compared over the reference.',
  designs: {
    independent: (reference: string, onlyA: string, compared: string, onlyB: string) =>
      `Independent design: ${onlyA} patients in ${reference}, ${onlyB} in ${compared}, none in both.`,
    'fellow-eye': (_reference: string, _onlyA: string, _compared: string, _onlyB: string, both: string) =>
      `Fellow-eye design: each of ${both} patients has one eye in each cohort.`,
    mixed: (reference: string, onlyA: string, compared: string, onlyB: string, both: string) =>
      `Mixed design: ${onlyA} patients with eyes in ${reference} only, ${onlyB} in ${compared} only, ${both} in both.`,
  },
  effect:
    'Relative effect: probability that an eye of the compared cohort has the larger value than one of the reference, ties counted half; 0.5 is no difference.',
  shift:
    'Shift: median of all differences between an eye of one cohort and one of the other (Hodges–Lehmann); its p is that of the relative effect. Where values are recorded in steps its limits fall on steps, and may touch 0 where p is small.',
  centroid: 'Difference of centroids as a vector, with the semi-axes of its region.',
  multiplicity: (k: string, error: string) =>
    `${k} primary intervals share an error of ${error}; the verdict follows the interval and never p.`,
  single:
    'The verdict follows the interval of the primary outcome and never p; with one primary outcome p needs no adjustment.',
  power:
    'Detectable with 80 % power: from the variance found here, never from the difference found; eyes needed suppose this design and these proportions.',
  rest: 'Further limits, lines and ratios of shares stand in results.csv.',
} as const;

const formulas = {
  against: (formula: string, primary: string) => `${formula} less ${primary}`,
  difference: 'Difference',
  eyes: 'Eyes with both predictions',
  textbook: 'p, textbook form',
  criteria: {
    formula_difference_spread: 'Spread: square of the centred error, D²',
    formula_difference_absolute: 'Absolute error, D',
    'formula_difference_share_within_0.50': 'Within ±0.50 D, percentage points',
  } as Readonly<Record<string, string>>,
  planned: 'the planned prediction',
  band: 'Band',
  byField: (formula: string, field: string) => `${formula}, by ${field}`,
  meanOf: 'Mean error of the formula, D',
  meanOfPrimary: (primary: string) => `Mean error of ${primary}, D`,
  inBands: {
    formula_difference_spread: 'Difference in spread (squared centred error), D²',
    formula_difference_absolute: 'Difference in absolute error, D',
    'formula_difference_share_within_0.50': 'Difference within ±0.50 D, percentage points',
  } as Readonly<Record<string, string>>,
  noTests:
    'Mean errors are raw: a mean taken off inside a band would hide the error that belongs to it. Bands are not tested: they are looked at for a pattern.',
  sameEyes:
    'Both errors of the same eye are compared: mean of the differences over eyes. Negative: the formula has less spread or error; of the share: fewer eyes within.',
  holm: 'p is adjusted by Holm’s method over the formulas, apart for each way of comparing them.',
  textbookForms:
    'Textbook forms, one eye a patient: Morgan–Pitman with HC4 standard error (spread), McNemar with mid-p (share).',
} as const;

const sensitivity = {
  main: 'Main analysis',
  ways: {
    'one-eye': 'One eye per patient',
    'without-queries': 'Without queried eyes',
    'lane-to-infinity': 'Lane corrected to infinity',
    'lane-as-recorded': 'Lane as recorded',
    'vertex-to-formula': 'Vertex restated',
    'vertex-as-recorded': 'Vertex as recorded',
  } as Readonly<Record<string, string>>,
  /** What a policy that was not chosen would do, by way. */
  policies: {
    'lane-to-infinity':
      'Lane corrected to infinity: every refraction of a known lane less 1/metres, as policies.lane: to-infinity would have it.',
    'lane-as-recorded': 'Lane as recorded: without the correction for the length of the lane that was declared.',
    'vertex-to-formula':
      'Vertex restated: every refraction found at another vertex distance taken to 12 mm by meridian, as policies.vertex: to-formula would have it; the main analysis does so beyond 3 D.',
    'vertex-as-recorded': 'Vertex as recorded: refractions up to 3 D without the restatement that was declared.',
  } as Readonly<Record<string, string>>,
  /** Eyes first: a spreadsheet takes what begins with a minus sign for a sum. */
  mean: (value: string, eyes: string) => `${eyes} eyes: ${value}`,
  share: (outcome: string) => `${outcome}, n/N, %`,
  oneEye: 'One eye per patient: the first operated, of those eligible; on the same day the right one.',
  queries: 'Without queried eyes: those with an unusual value that waits for the clinic to confirm it.',
  lowVision:
    'Other values for counting fingers and hand movements would move none of these shares: both are worse than any line counted.',
} as const;

const sentences = {
  verdict: (outcome: string, answer: string, difference: string) => `${outcome}: ${answer}; ${difference}.`,
  difference: (value: string, level: string, limits: string) => `difference ${value} (${level} CI ${limits})`,
  ratio: (value: string, level: string, limits: string) => `ratio ${value} (${level} CI ${limits})`,
  effect: (value: string, level: string, limits: string) =>
    `probability of the larger value ${value}, 0.5 being no difference (${level} CI ${limits})`,
  vector: (vector: string, level: string, major: string, minor: string) =>
    `difference ${vector} (semi-axes of its ${level} region ${major} and ${minor} D)`,
  notEstimable: (outcome: string, compared: string, reference: string, why: string) =>
    `${outcome}, ${compared} against ${reference}: not estimable. ${why}`,
  margin: (margin: string) => `The margin is ${margin}.`,
  small: (detectable: string) =>
    `The smallest difference that this many eyes would show with 80 % power is ${detectable}.`,
  smallRatio: (detectable: string) =>
    `The smallest ratio that this many eyes would show with 80 % power is ${detectable}, or its inverse.`,
  needed: (eyes: string, difference: string) =>
    `A difference of ${difference} needs ${eyes} eyes in both cohorts together.`,
  exploratory: 'All other comparisons are exploratory: they have intervals and no verdict.',
} as const;

/** English words: cohorts against a reference, formulas against each other, the same with fewer eyes. */
export const comparison = {
  verdicts,
  answers,
  statistics,
  brief,
  table,
  declared,
  confounding,
  concerns,
  notes,
  formulas,
  sensitivity,
  sentences,
} as const;
