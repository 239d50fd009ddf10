/** One estimate with its interval: what every function of this folder that summarises eyes gives back. */
export interface Estimate {
  /** Undefined where it does not exist; `notes` then says why. */
  value: number | undefined;
  low: number | undefined;
  high: number | undefined;
  /** Eyes in the estimate. */
  n: number;
  /** Patients with at least one of these eyes. */
  patients: number;
  /** One of `estimateMethods`. */
  method: string;
  /** Of `estimateNotes`. */
  notes: readonly string[];
}

/** Codes of the column `method`, each with the method it stands for. */
export const estimateMethods = {
  'mean-patient-t': 'mean of the eyes, variance from patient sums, t with patients − 1 degrees of freedom',
  'wilson-effective-n': 'Wilson score interval at the eyes divided by the design effect',
  'exact-effective-n': 'Clopper–Pearson interval at the eyes divided by the design effect',
  'wilson-patients': 'share of exactly 0 or 1: Wilson score interval with the patients as n',
  'exact-patients': 'share of exactly 0 or 1: Clopper–Pearson interval with the patients as n',
  'log-patient-t': 'interval of the logarithm by the patient variance of the mean, back-transformed',
  'log-jackknife-t': 'interval of the logarithm by the jackknife over patients, back-transformed',
  'geometric-patient-t': 'mean interval of the logarithms, back-transformed',
  'rank-effective-n': 'quantiles at the score limits of one half, at the eyes divided by the design effect',
  'constant-zero-mean': 'lens constant of zero mean error; limits where the mean error equals ± t·√V from patient sums',
  'straight-line-patient-t': 'least-squares line, variance from influences summed by patient, t with patients − 2',
  'natural-spline-patient-t':
    'natural cubic spline of 3 degrees, variance from influences summed by patient, t with patients − 4',
  'hotelling-patient': 'Hotelling region with the covariance of the centroid from patient sums',
  'difference-patient-t':
    'difference of means, variance from patient sums of both cohorts, t with Satterthwaite degrees',
  'ratio-jackknife-t': 'log ratio by the jackknife over patients of both cohorts, t with Satterthwaite degrees',
  'placements-patient-t': 'relative effect by placements, variance from patient sums, t with Satterthwaite degrees',
  'shift-placements':
    'median of all differences; limits are quantiles of the differences at the placement limits of one half',
  'square-and-add': 'square-and-add of two score intervals with the correlation of the patient sums',
  'newcombe-paired-phi-corrected': 'paired square-and-add of two score intervals with corrected φ',
  'log-ratio-patient-t':
    'log ratio of shares, variance from patient sums of both cohorts, t with Satterthwaite degrees',
  'centroid-difference': 'difference of centroids, covariance from patient sums, degrees by Krishnamoorthy and Yu',
} as const;

/** Codes of the column `note`, each with its reason. */
export const estimateNotes = {
  'not-estimable:no-eyes': 'no eye has the value',
  'not-estimable:one-eye': 'one eye has no spread',
  'not-estimable:few-patients': 'fewer than 5 patients: no interval',
  'not-estimable:no-spread': 'all values are equal: no interval on the logarithmic scale',
  'not-estimable:one-patient-varies': 'without one patient all values are equal: no jackknife',
  'not-estimable:complete-separation': 'no value of one cohort lies among those of the other',
  'not-estimable:zero-share': 'a ratio of shares needs both above zero',
  'not-estimable:few-eyes': 'fewer than 10 eyes: no lens constant is sought',
  'not-estimable:no-constant': 'no lens constant brings the mean error to zero',
  'not-estimable:no-constant-limit': 'no lens constant brings the mean error to the limits of its interval',
  'provisional:constant': 'lens constant of 10 to 29 eyes',
  'few-patients': '5 to 9 patients',
  'heavy-tails': 'excess kurtosis above 2: the interval covers less than it says',
  'icc:whole-audit': 'fewer than 5 patients with both eyes here: correlation of fellow eyes from the whole audit',
  'icc:fellow-eyes-identical': 'fewer than 5 patients with both eyes anywhere: fellow eyes taken as identical',
  'degenerate:points-on-a-line': 'all points on one line: the ellipse is a segment, no test',
  'degenerate:identical-points': 'all points equal: the ellipse is a point, no test',
  'degenerate:patient-sums': 'the patients’ sums lie on one line: no test',
  'design:independent': 'no patient in both cohorts',
  'design:fellow-eye': 'each patient one eye in each cohort',
  'design:mixed': 'some patients in both cohorts',
  'textbook:welch': 'one eye a patient: identical with Welch’s t',
  'textbook:paired-t': 'one eye in each cohort: identical with the paired t',
} as const;

export type EstimateMethod = keyof typeof estimateMethods;
export type EstimateNote = keyof typeof estimateNotes;

/** Lower and upper limit. */
export type Limits = readonly [low: number, high: number];

/** Below this many patients no interval is given; below the second it is marked. */
export const fewestPatients = 5;
const fewPatients = 10;

/** The mark that a number of patients earns by itself. */
export function patientNotes(patients: number): readonly EstimateNote[] {
  if (patients < fewestPatients) return ['not-estimable:few-patients'];
  return patients < fewPatients ? ['few-patients'] : [];
}

/**
 * An estimate by the rules that all share: without eyes no value, below 5 patients no interval, 5 to 9 marked.
 *
 * @param about  eyes, patients, method
 * @param value  the estimate, asked for only where there is an eye
 * @param limits its limits, or the reason why there are none; asked for only at 5 patients or more
 * @param notes  further marks that hold with or without limits
 * @source small samples by this project's settled rules: all thresholds count patients
 */
export function estimate(
  about: { n: number; patients: number; method: EstimateMethod },
  value: number | undefined,
  limits: () => Limits | EstimateNote,
  notes: readonly EstimateNote[] = [],
): Estimate {
  const bare = { ...about, value, low: undefined, high: undefined };
  if (about.n === 0) return { ...bare, value: undefined, notes: ['not-estimable:no-eyes'] };
  const marks = [...patientNotes(about.patients), ...notes];
  if (about.patients < fewestPatients) return { ...bare, notes: marks };
  const found = limits();
  if (typeof found === 'string') return { ...bare, notes: [...marks, found] };
  return { ...bare, low: found[0], high: found[1], notes: marks };
}
