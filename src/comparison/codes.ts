/** Codes of the column `method` that comparisons add to those of estimates, each with what it stands for. */
export const comparisonMethods = {
  'fisher-mid-p': 'Fisher’s test of two independent shares, mid-p',
  'mcnemar-mid-p': 'McNemar’s test of two paired shares, mid-p',
  'morgan-pitman-hc4': 'Morgan–Pitman test of two correlated variances with HC4 standard error',
  'linear-model-patient-t':
    'linear model on the eyes, variance from regression influences summed by patient, t with Satterthwaite degrees',
  'standardised-difference': 'difference in standard deviations, without a test',
  'power-80': 'from the variance found, at 80 % power',
  holm: 'Holm’s step-down adjustment',
  bonferroni: 'the declared error shared equally',
  bound: 'every eye without the value counted as failed, or as succeeded',
  overlap: 'sum of the smaller shares of two mixes',
} as const;

/** Codes of the column `note` that comparisons add; some have a value behind a colon. */
export const comparisonNotes = {
  'textbook:brunner-munzel': 'one eye a patient: identical with the test of Brunner and Munzel',
  'textbook:hotelling': 'one eye in each cohort: identical with the paired Hotelling test',
  'textbook:krishnamoorthy-yu':
    'one eye a patient: identical with the test of two centroids at unequal covariances of Krishnamoorthy and Yu',
  'not-estimable:zero-vector': 'a difference of exactly zero has no direction',
  'not-estimable:few-patients-for-covariates': 'fewer than 5 patients more than the model has columns',
  /** Followed by the covariate: `not-estimable:collinear:surgeon`. */
  'not-estimable:collinear': 'a covariate follows from the cohorts and the covariates before it',
  /** Followed by the number of primaries: `primary:k=2`. */
  primary: 'a declared primary outcome',
  /** Followed by one of `verdicts`. */
  verdict: 'what the interval of a primary outcome allows to be said',
  imbalance: 'standardised difference beyond 0.1',
  'no-overlap': 'nothing in common',
  uneven: 'overlap below 0.75',
  learning: 'eyes of a surgeon’s first 20 with it, taken up during the audit',
  'not-estimable:no-order': 'the order of operations is not known',
} as const;
