const plain = (name: string): string => {
  const text = name.replaceAll('_', ' ');
  return text.charAt(0).toUpperCase() + text.slice(1);
};

const titles = {
  'acuity-change': (visit: string) =>
    `Corrected acuity gained and lost at ${visit}, efficacy and safety (eligible eyes)`,
  safety: () => 'Safety: complications, capsulotomy and return to theatre (operated eyes), endothelium (eligible eyes)',
  resources: () => 'Time and energy of the operation (operated eyes)',
} as const;

/** Outcomes that cohorts are compared by: as a block of rows, and in a few words. */
const compared: Readonly<Record<string, { block: string; name: string }>> = {
  cdva_change: {
    block: 'Change of corrected acuity, logMAR (before − after, + is a gain)',
    name: 'Change of corrected acuity',
  },
  efficacy_ratio: { block: 'Efficacy ratio (uncorrected after / corrected after)', name: 'Efficacy ratio' },
  efficacy_index: { block: 'Efficacy index (uncorrected after / corrected before)', name: 'Efficacy index' },
  safety_index: { block: 'Safety index (corrected after / corrected before)', name: 'Safety index' },
  'udva:near_target': {
    block: 'Uncorrected distance acuity after surgery, logMAR (eyes not aimed at distance)',
    name: 'Uncorrected acuity, eyes not aimed at distance',
  },
  uiva: { block: 'Uncorrected intermediate acuity after surgery, logMAR', name: 'Uncorrected intermediate acuity' },
  unva: { block: 'Uncorrected near acuity after surgery, logMAR', name: 'Uncorrected near acuity' },
  capsulotomy_incomplete: { block: 'Capsulotomy incomplete (operated eyes)', name: 'Capsulotomy incomplete' },
  return_to_theatre: {
    block: 'Unplanned return to theatre (operated eyes)',
    name: 'Unplanned return to theatre',
  },
  endothelium_after: { block: 'Endothelial cells after surgery, per mm²', name: 'Endothelial cells after surgery' },
  endothelial_loss: { block: 'Endothelial cells lost, %', name: 'Endothelial cell loss' },
  case_time_min: { block: 'Time of the case, min (operated eyes)', name: 'Time of the case' },
  laser_time_s: { block: 'Time of the laser, s (operated eyes)', name: 'Time of the laser' },
  phaco_time_s: { block: 'Time of ultrasound, s (operated eyes)', name: 'Time of ultrasound' },
  effective_energy: {
    block: 'Effective energy, in the unit of its machine (operated eyes)',
    name: 'Effective energy',
  },
};

const complications: Readonly<Record<string, string>> = {
  anterior_tear: 'Tear of the anterior capsule',
  other: 'Another complication',
};

const rows = {
  event: (name: string) => `${name}, n/N, %`,
  notRecorded: 'not recorded, eyes',
  typical: (level: string) => `Typical loss, % (geometric mean of what is left; ${level} CI)`,
  medianQuartiles: 'Median (quartiles)',
  lines: {
    '-3': 'Lost 3 lines or more',
    '-2': 'Lost 2 lines',
    '-1': 'Lost 1 line',
    '0': 'No line lost or gained',
    '1': 'Gained 1 line',
    '2': 'Gained 2 lines',
    '3': 'Gained 3 lines or more',
  } as Readonly<Record<string, string>>,
  lost: (lines: string) => `Lost ${lines} ${lines === '1' ? 'line' : 'lines'} or more, n/N, %`,
  geometric: 'Geometric mean',
  ratioOfMeans: 'Ratio of the mean decimal acuities (classic form)',
  lowVision: {
    from_low_vision: 'From a low-vision word to a measured acuity, eyes',
    to_low_vision: 'From a measured acuity to a low-vision word, eyes',
    low_vision_both: 'Low-vision word before and after, eyes',
  } as Readonly<Record<string, string>>,
  zero: 'Eyes with exactly zero',
  shift: (compared: string, reference: string) => `${compared} − ${reference}, shift (Hodges–Lehmann)`,
  medianIn: (group: string) => `Median, ${group}`,
} as const;

const blocks = {
  complications: 'During and after surgery (operated eyes)',
  endothelium: 'Endothelium (eligible eyes counted before and after by one device)',
  before: 'Cells before surgery, per mm²',
  after: 'Cells after surgery, per mm²',
  change: 'Change of corrected acuity in lines (before − after)',
  lowVision: 'Low-vision words, which are no lines',
} as const;

const notes = {
  denominator: (eyes: string) =>
    `N: of ${eyes} eyes operated those whose record says whether it happened, with or without follow-up.`,
  blankMissing:
    'A blank cell is missing, never “none”: nothing in audit.yaml declares what a blank means (blank_means).',
  blankDeclared: (fields: string) =>
    `A blank cell counts as “none” because audit.yaml declares it (blank_means: ${fields}).`,
  zero: (list: string) =>
    `No event does not mean no risk. One-sided upper limit 1 − 0.05^(1/n) at 95 % confidence, close to 3/n (rule of three), n the patients: ${list}.`,
  zeroLevel: (level: string, list: string) =>
    `No event does not mean no risk. One-sided upper limit at ${level} confidence, 1 − (1 − confidence)^(1/n), n the patients: ${list}.`,
  zeroOf: (name: string, column: string, patients: string, limit: string) =>
    `${name}, ${column} (0 of ${patients} patients) below ${limit} %`,
  apart: 'Completeness of the capsulotomy and tears are outcomes apart: a complete cut may tear.',
  rare: 'With few eyes and rare events, no difference shown is not evidence of equal safety.',
  loss: 'Loss: 100 (before − after) / before in each eye; its typical value and interval come from the mean of ln(after / before).',
  regression:
    'Counts vary from one picture to the next: an eye counted high by chance before surgery seems to have lost cells, one counted low to have gained (regression to the mean). Groups that start from different counts are not comparable by loss alone.',
  months: (list: string) => `Months from surgery to the count, median (range): ${list}.`,
  monthsUnknown: 'Months from surgery to the count: not given.',
  monthsOf: (column: string, median: string, low: string, high: string) => `${column} ${median} (${low} to ${high})`,
  edges:
    'Lines by fixed edges of the change in logMAR: no line below 0.05; 1 line from 0.05 to below 0.19; 2 lines from 0.19 to below 0.29; 3 or more from 0.29. Acuity is not snapped to a line first.',
  cataract:
    'The cataract lowers acuity before surgery: gains are large and indices against the acuity before surgery exceed 1 for that reason; losses are understated.',
  ratios:
    'Ratios are of decimal acuities: 10 to the mean of the paired differences in logMAR. Eyes with a low-vision word are left out of changes and ratios, and counted.',
  machineDefined: 'Energy is defined by each machine and has no common unit.',
  machines: (list: string) => `Machines: ${list}.`,
  noMachine:
    'Which machine was used is not recorded: were there several, their energies and times would not be comparable.',
  shift: 'Shift: median of all differences between an eye of one cohort and one of the other.',
  surgeons:
    'Nucleus, surgeon and date go together with technique where patients were not drawn by lot: see the table of what goes together with the cohorts.',
  severalMachines: 'Eyes operated with different machines, pooled: their energies and times are not comparable.',
  unaimed: 'Eyes not aimed at distance stand apart and enter no share of distance acuity.',
} as const;

/** English words: safety, change of acuity, endothelium, time and energy. */
export const outcomes = {
  titles,
  compared,
  complication: (name: string) => complications[name] ?? plain(name),
  rows,
  blocks,
  notes,
  eyeFlow: {
    names: {
      near_target: 'uncorrected acuity of eyes not aimed at distance',
      near: 'near acuity',
      intermediate: 'intermediate acuity',
      endothelium: 'endothelial cells',
    },
    reasons: {
      distance_target: 'aimed at distance',
      no_before: 'no count before surgery',
    },
  },
  fields: { nucleus_grade: 'Nucleus grade' },
  warnings: {
    machines: (list: string) =>
      `Times and energies come from several machines (${list}): energy is defined by each machine, and what is pooled over them is not comparable.`,
  },
} as const;
