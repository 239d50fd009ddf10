/** English words: the report page. */
export const page = {
  kicker: 'Cataract surgery outcomes audit',
  kickerInternal: 'Cataract surgery outcomes audit · with single eyes: stays in the clinic',
  internalMark: 'stays in the clinic',
  skip: 'Skip to the results',
  contents: 'Questions of this report',
  inShort: 'In short',
  care: 'Read with care',
  methods: 'How were these numbers made?',
  figure: (number: number) => `Figure ${number}`,
  table: (number: number) => `Table ${number}`,
  reportPage: 'index.html',
  walk: 'Arrow keys walk from eye to eye.',

  interval: (level: string, limits: string) => `${level} CI ${limits}`,
  stated: (label: string, value: string) => `${label}: ${value}`,
  statedShare: (label: string, fraction: string, value: string) => `${label}: ${fraction} eyes, ${value}`,
  eyes: (n: string) => `${n} eyes`,
  ofEyes: (fraction: string) => `${fraction} eyes`,
  judged: (eyes: string, basis: string) => `${eyes}, ${basis}`,
  shareScale: { zero: '0', half: '50', all: '100 %' },

  period: {
    all: 'All operations in the data',
    until: (to: string) => `Operated until ${to}`,
    since: (from: string) => `Operated since ${from}`,
    in: (when: string) => `Operated in ${when}`,
    between: (from: string, to: string) => `Operated ${from} to ${to}`,
  },
  months: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ] as readonly string[],
  cohort: (eyes: string, patients: string, both: string) =>
    `${eyes} eyes of ${patients} patients, ${both} of them with both eyes`,
  cohorts: (field: string, names: string) => (field === '' ? `Cohorts: ${names}` : `${field}: ${names}`),

  questions: {
    eyes: 'How many eyes have a usable outcome, and why not the rest?',
    data: 'Can the data be trusted?',
    plan: 'How close to plan?',
    systematic: 'Is the error systematic, and where?',
    astigmatism: 'What astigmatism was there, what remains, which way does it point?',
    incision: 'What does the incision do?',
    toric: 'Did toric lenses do what was planned?',
    vision: 'What vision was gained?',
    safety: 'Was it safe?',
    resources: 'What did it take in time and energy?',
    time: 'Does it last, and is anything drifting?',
    more: 'Further tables and figures',
  },
  isDifferent: (compared: string, reference: string) => `Is ${compared} different from ${reference}?`,
  notRecorded: 'The data of this audit do not tell.',
  centroid: (what: string, vector: string) => `${what}, centroid: ${vector}.`,
  doubts: (setAside: string, query: string, note: string) =>
    `${setAside} findings set an impossible value or row aside; ${query} wait for the clinic to confirm an unusual one; ${note} are noted only.`,
  ruleOff: (rule: string, reason: string) => `The rule ${rule} was switched off: ${reason}.`,
  columnReviewed: (column: string, reason: string) =>
    `The column “${column}” was declared free of identifiers: ${reason}.`,

  sides: { right: 'right', left: 'left' },

  severities: {
    'set aside': 'Set aside: impossible values, treated as missing',
    query: 'To confirm: unusual values, kept',
    note: 'Noted',
  },

  lists: {
    'eyes.csv': 'one row an eye: what was read, what follows from it, and why it is left out',
    'queries.csv': 'what to set right or to confirm, by patient',
    'review.csv': 'the eyes above',
    'flow.csv': 'the books: rows, measurements and eyes, kept and left out',
  } as Readonly<Record<string, string>>,

  review: {
    title: 'Which eyes should be looked at again?',
    caption: 'Eyes to look at again, by patient',
    head: ['Patient', 'Eye', 'Year', 'Reason'],
    answer: (count: number) =>
      count === 0
        ? 'No eye meets a reason for review.'
        : count === 1
          ? 'One eye meets a reason for review. The reason is a question, not a verdict.'
          : `${count} eyes meet a reason for review. A reason is a question, not a verdict.`,
    more: (shown: string) => `The first ${shown} are listed here, all of them in review.csv.`,
    files: 'The whole lists, beside this page',
    reasons: {
      predictionError: (error: string) => `prediction error ${error} D`,
      targetError: (error: string) => `error against the target ${error} D`,
      surprise: (told: string) => `refraction surprise: ${told}`,
      cylinder: (error: string) => `cylinder ${error} D from the one predicted`,
      misalignment: (degrees: string) => `lens ${degrees}° from the intended axis`,
      acuity: (before: string, after: string) =>
        `corrected acuity worse than before surgery: logMAR ${before} before, ${after} after`,
      complication: 'complication during surgery',
    },
  },
};
