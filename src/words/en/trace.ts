/** English words: the trace of one eye. */
export const trace = {
  operated: (year: string) => `operated ${year}`,
  operatedUndated: 'operated, date not given',
  before: 'before surgery',
  outcome: (visit: string) => `outcome, ${visit}`,
  day: (days: string) => `day ${days}`,
  dayUnknown: 'day not given',
  place: (file: string, row: string) => `${file} row ${row}`,
  /** What stood in a cell before the clinic corrected it. */
  formerly: (written: string) => `(corrected; formerly ‘${written}’)`,
  cell: (header: string, value: string) => `"${header}" ‘${value}’`,
  cells: {
    surgery: 'surgery list',
    before: 'examinations before surgery',
    outcome: 'outcome examinations',
  },
  kinds: {
    refractions: 'refraction',
    uncorrected: 'uncorrected acuity',
    corrected: 'corrected acuity',
    near: 'near acuity',
    intermediate: 'intermediate acuity',
    keratometries: 'keratometry',
    totalCorneas: 'total cornea',
    posteriorCorneas: 'posterior cornea',
    lensAxes: 'lens axis',
    endothelia: 'endothelium',
    pressures: 'pressure',
    thicknesses: 'thickness',
  },
  families: {
    safety: 'safety',
    eligible: 'before surgery',
    refraction: 'refraction',
    astigmatism: 'astigmatism, at the cornea',
    cornea: 'induced astigmatism',
    toric: 'toric lens',
    corrected: 'corrected acuity',
    distance: 'before surgery, distance-target eyes',
    uncorrected: 'uncorrected acuity',
    near_target: 'uncorrected acuity, eyes not aimed at distance',
    near: 'near acuity',
    intermediate: 'intermediate acuity',
    endothelium: 'endothelium',
    resources: 'time and energy',
  },
  enters: 'enters',
  staysOut: 'does not enter',
  missing: 'missing',
  none: 'none',
  noAxis: 'no axis',
  beyondChart: 'worse than any chart',
  property: (holds: boolean) => (holds ? 'yes' : 'no'),
  /** When an input was measured. */
  at: {
    before: 'before',
    before_same_device: 'before, same device',
    outcome: 'outcome',
    followup: 'follow-up',
    front: 'from the front of the cornea',
  },
  standing: 'enters, or does not',
  groups: 'groups of this eye',
  table: (number: string, id: string) => `adds to table ${number}, ${id}`,
  under: (step: string) => `counted under: ${step}`,
  /** Steps of the flow are named as results.csv names them. */
  step: (name: string) => name.replace(/^excluded:/, '').replaceAll('_', ' '),
  groupPart: (group: string, eyes: string, parts: string) =>
    `${group}: one of ${eyes}${parts === '' ? '' : `; ${parts}`}`,
  adds: (own: string, eyes: string, statistic: string, value: string) =>
    `${own} / ${eyes} of the ${statistic} ${value}`,
  beside: (order: string, statistic: string, value: string) => `${order} the ${statistic} ${value}`,
  order: (sign: number) => (sign < 0 ? 'below' : sign > 0 ? 'above' : 'at'),
  statistics: {
    mean: 'mean',
    mean_absolute: 'mean without sign',
    mean_magnitude: 'mean magnitude',
    geometric_mean: 'logarithm of the geometric mean',
    centroid_x: 'centroid',
    median: 'median',
    median_absolute: 'median without sign',
    median_magnitude: 'median magnitude',
  } as Readonly<Record<string, string>>,
  shareName: (statistic: string, unit: string) =>
    statistic
      .replace(/^share_within_(.*)$/, `≤ $1${unit}`)
      .replace(/^share_beyond_(.*)$/, `> $1${unit}`)
      .replace('share_at_or_better_', '')
      .replace(/^share$/, 'the share'),
  countedIn: (shares: string) => `counted in: ${shares}`,
  notCountedIn: (shares: string) => `not counted in: ${shares}`,
  addsNothing: 'nothing: the eye has no value for any of its rows',
  amongMissing: (groups: string) => `counted among the missing of ${groups}`,
  perPatient: 'one value a patient, that of the first eye which has it',
  inDifferences: (cohort: string) => `in the differences of cohorts, as an eye of ${cohort}`,
  from: (inputs: string) => `from ${inputs}`,
  not: (inputs: string) => `not known: ${inputs}`,
  inFrame: (along: string, torque: string) => `along ${along}, torque ${torque} D`,
  component: (name: string, worked: string | undefined, value: string) =>
    worked === undefined ? `${name} = ${value}` : `${name} = ${worked} = ${value}`,
  worked: (text: string) => `= ${text}`,

  plusAlready: (refraction: string) => `in plus notation ${refraction}`,
  transposed: (written: string, sphere: string, axis: string, refraction: string) =>
    `${written} in plus notation: sphere ${sphere}, axis ${axis}: ${refraction}`,
  radius: (radius: string, power: string) => `337.5 / ${radius} mm = ${power} D`,
  reindexed: (written: string, divisor: string, power: string) =>
    `${written} × 337.5 / ${divisor} = ${power} D, at the index of every K`,
  flatAndSteep: (flat: string, steep: string, axis: string) => `flat ${flat} D; steep ${steep} D, meridian ${axis}`,
  acuity: (decimal: string, logMAR: string) => `−log10 of decimal ${decimal} = ${logMAR} logMAR`,
  standsFor: (logMAR: string) => `stands for ${logMAR} logMAR`,
  clock: (hour: string, view: string, degrees: string) => `incision at ${hour} o’clock ${view} = ${degrees}°`,
  views: {
    facing: 'facing the patient',
    'surgeon-superior': 'from the surgeon’s seat above',
    'surgeon-temporal': 'from the surgeon’s temporal seat',
  },
  lensSphere: (sphere: string, cylinder: string, equivalent: string) =>
    `spherical equivalent of the lens: ${sphere} + ${cylinder} / 2 = ${equivalent} D`,
} as const;
