const capital = (clause: string): string => clause.charAt(0).toUpperCase() + clause.slice(1);

const eyes = (n: string): string => `${n} ${n === '1' ? 'eye' : 'eyes'}`;
const persons = (n: string): string => `${n} ${n === '1' ? 'patient' : 'patients'}`;

/** Labels of the headline numbers; `half` is the limit in dioptres. */
const labels = {
  operated: 'Operated',
  'outcome-known': 'Outcome known, of eyes due',
  'within-half': (half: string) => `Within ±${half} D`,
  'mean-error': 'Mean error',
  cylinder: (half: string) => `Recorded cylinder ≤ ${half} D`,
  corrected: 'Corrected 20/40 (6/12) or better',
  uncorrected: 'Uncorrected, distance target',
  complication: 'Complication during surgery',
} as const;

const sentences = {
  operated: (n: string, patients: string) =>
    `${eyes(n)} of ${persons(patients)} ${n === '1' ? 'was' : 'were'} operated`,
  known: (known: string, due: string, share: string) =>
    `the outcome is known for ${known} of the ${due} eligible eyes whose visit was due, ${share}`,
  nothingDue: 'no outcome visit was due when the data were exported',
  within: (inside: string, n: string, share: string, reference: string) =>
    `${inside} of ${n} eyes ended within half a dioptre of ${reference}, ${share}`,
  mean: (amount: string, direction: string, limits: string) =>
    `on average they were ${amount} D ${direction} than that${limits}`,
  meanZero: (limits: string) => `on average they were neither more myopic nor more hyperopic than that${limits}`,
  moreMyopic: 'more myopic',
  moreHyperopic: 'more hyperopic',
  noRefraction: 'no eye has both a refraction after surgery and a prediction or a target',
  corrected: (inside: string, n: string, share: string) =>
    `with correction, ${inside} of ${n} eyes reach 20/40 (6/12) or better, ${share}`,
  noAcuity: 'no corrected acuity after surgery is recorded',
  complication: (events: string, n: string, share: string) =>
    `a complication during surgery is recorded in ${events} of ${n} eyes, ${share}`,
  noComplication: 'whether there were complications is not recorded',
  share: (percent: string, level: string, limits: string) => `${percent} % (${level} CI ${limits})`,
  bareShare: 'too few patients for a percentage',
  limits: (level: string, limits: string) => ` (${level} CI ${limits})`,
  single: (clause: string) => `${capital(clause)}.`,
  joined: (first: string, second: string) => `${capital(first)}; ${second}.`,
} as const;

const warnings = {
  fewPatients: (list: string) =>
    `Few patients (${list}): intervals are wide, and a single patient can move every number.`,
  fewPatientsIn: (column: string, patients: string) => `${column}: ${patients}`,
  followUpLow: (list: string) =>
    `The outcome is known for fewer than 80 % of the eyes that were due (${list}): eyes that did not return may have fared otherwise.`,
  followUpLowIn: (column: string, known: string, due: string, share: string) =>
    `${column}: ${known} of ${due}, ${share} %`,
  followUpUneven: (list: string) =>
    `Follow-up differs by more than 10 points between cohorts (${list}): a difference between them may be one of who returned.`,
  bothEyes: (both: string, patients: string) =>
    `${both} of ${patients} patients have both eyes in the audit. Fellow eyes resemble each other; every interval allows for it.`,
} as const;

/** English words: headline numbers, the sentences under them, warnings, legends. */
export const reportText = {
  labels,
  sentences,
  warnings,
  basis: {
    prediction_error: 'by predicted refraction',
    target_error: 'by the surgeon’s target',
  },
  reference: {
    prediction_error: 'the predicted refraction',
    target_error: 'the surgeon’s target',
  },
  fraction: (numerator: string, n: string) => `${numerator} of ${n}`,
  eyesAndPatients: (n: string, patients: string) => `${eyes(n)}, ${persons(patients)}`,
  percent: (value: string) => `${value} %`,
  dioptres: (value: string) => `${value} D`,
  exact: (limits: string) => `${limits}, exact`,
  tablesHeading: 'Tables',
  figuresHeading: 'Figures',
  legendsHeading: 'Titles, footnotes and legends',
} as const;
