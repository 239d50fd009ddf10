import { angles, type SignedQuantityWords } from './angles.js';
import { cylinderShares } from './cylinder-shares.js';
import { standingCharts } from './standing-charts.js';

/** '1 eye', '371 eyes'. */
const eyes = (count: string): string => `${count} ${count === '1' ? 'eye' : 'eyes'}`;
const patients = (count: string): string => `${count} ${count === '1' ? 'patient' : 'patients'}`;

const dioptres = (value: string): string => `${value} D`;

/** The two errors of the spherical equivalent. */
const errors = {
  prediction_error: {
    name: 'Prediction error',
    reference: 'the refraction predicted for the lens implanted',
  },
  target_error: {
    name: 'Target error',
    reference: 'the refraction intended by the surgeon',
  },
} as const;

/** An error of the spherical equivalent as its histogram tells it. */
function sphericalError({ name, reference }: (typeof errors)[keyof typeof errors]): SignedQuantityWords {
  return {
    title: `${name} of the spherical equivalent`,
    axis: `${name}, D`,
    negative: '← more myopic',
    positive: 'more hyperopic →',
    amount: dioptres,
    within: (percent, limit) => `${percent} % within ±${dioptres(limit)}`,
    below: (edge) => `below ${dioptres(edge)}`,
    above: (edge) => `above ${dioptres(edge)}`,
    legend:
      `${name}: achieved minus ${reference}, spherical equivalent in the spectacle plane; negative is more myopic. ` +
      'Bins of 0.25 D are centred on 0; a value on an edge counts in the bin nearer 0. ' +
      'Brackets: eyes within ±0.50 D and ±1.00 D, counted from the values and not from the bins.',
    altLead: `Histogram of the ${name.toLowerCase()} in bins of 0.25 dioptre. `,
  };
}

const signedQuantities = {
  prediction_error: sphericalError(errors.prediction_error),
  target_error: sphericalError(errors.target_error),
  ...angles,
} as const;

const histogram = {
  share: 'Eyes, %',
  centre: (mean: string, sd: string) => `mean ${mean}, SD ${sd}`,
} as const;

const accuracyShares = {
  title: (error: string) => `${error}: share of eyes within each limit`,
  within: (error: string) => `${error} within`,
  limit: (limit: string) => `±${limit} D`,
  axis: 'Eyes, %',
  shareHead: (level: string) => `(${level} CI)`,
  legend: (error: string, reference: string, level: string) =>
    `Share of eyes whose ${error.toLowerCase()} (achieved minus ${reference}, spherical equivalent, spectacle plane) is ` +
    `within each limit, with its ${level} confidence interval. Each limit includes the ones above it.`,
  altLead: (error: string) => `Shares of eyes by ${error.toLowerCase()}. `,
  altShare: (limit: string, percent: string) => `${percent} % within ±${limit} dioptres`,
} as const;

const acuityCumulative = {
  title: 'Distance acuity: share of eyes that reach each line',
  share: 'Eyes, %',
  lines: 'Snellen line reached or passed, 20/…',
  series: {
    cdva_before: 'corrected, before',
    udva: 'uncorrected, after (distance-target eyes)',
    cdva: 'corrected, after',
  },
  legend:
    'Share of eyes that reach each Snellen line or a better one, before and after surgery; the numbers below the lines ' +
    'are percent of eyes. ' +
    'Uncorrected acuity counts only eyes aimed at distance. Acuity is not snapped to a line: a line is reached at its ' +
    'nominal tenth of logMAR + 0.005 or better. Acuity before surgery is lowered by the cataract.',
  altLead: 'Cumulative distance acuity. ',
  altShare: (line: string, percent: string) => `${percent} % at ${line} or better`,
} as const;

const doubleAngle = {
  ring: (dioptres: string) => `${dioptres} D`,
  meridian: (degrees: string) => `${degrees}°`,
  flattened: '← flattened',
  steepened: 'steepened →',
  centroid: (vector: string) => `centroid ${vector}`,
  centroidRegion: (centroid: string, level: string) => `${centroid} (${level} region)`,
  vector: (magnitude: string, axis: string) => `${magnitude} D @ ${axis}°`,
  magnitude: (magnitude: string) => `${magnitude} D`,
  alongTorque: (along: string, torque: string) => `${along} D along, ${torque} D torque`,
  nextEye: (level: string, inside: string) => `${level} region for the next eye; ${inside}`,
  inside: (share: string) => `${share} % of these eyes are inside`,
  noRegion: 'no region: too few patients',
  noSpread: 'no region: every eye lies at one place',
  direction: {
    eye:
      'The distance from the middle is the cylinder in dioptres; the direction is its steep meridian, doubled, so ' +
      'that 180° lies opposite to 90°. Left eyes are not mirrored.',
    incision:
      'The distance from the middle is the change in dioptres; the direction is the angle from the incision to the ' +
      'meridian of steepening, doubled: to the left the cornea flattened along the incision, to the right it steepened, ' +
      'upwards is torque counter-clockwise.',
  },
  legend: (level: string) =>
    'Each mark is an eye; a larger mark is several eyes at one place. Cross: centroid, the mean vector. Full line ' +
    `around it: the region that holds the true centroid with ${level} confidence, patients with two eyes accounted ` +
    `for. Broken line: the region expected to hold the next eye in ${level} of cases, if vectors were normally ` +
    'distributed.',
  cells:
    'Where a panel has more than 2,000 eyes, or small counts are to be hidden, squares stand for the eyes of one cell: ' +
    'the larger the square, the more eyes.',
  cellsHidden: (least: string) => `Cells with fewer than ${least} eyes are not drawn.`,
  withoutAxis: (eyeCount: string) => `Refractions with a cylinder but no usable axis, not drawn: ${eyes(eyeCount)}.`,
  altLead: 'Double-angle plots of astigmatism. ',
} as const;

const eyeFlow = {
  title: 'Eye flow: from eyes operated to eyes analysed',
  operated: 'Eyes operated',
  patients: 'patients',
  eligible: 'Eligible eyes',
  due: 'Due at the outcome visit',
  analysed: 'Eyes analysed',
  families: {
    refraction: 'for the spherical equivalent',
    astigmatism: 'for astigmatism as a vector',
    corrected: 'for corrected acuity',
    uncorrected: 'for uncorrected acuity (distance-target eyes)',
  },
  legend:
    'Counts of eyes. An eye leaves at the first reason that holds, from top to bottom; reasons that no eye had are not ' +
    'shown. The way drawn is that of the spherical equivalent; how eyes leave the other analyses stands in the ' +
    'eye-flow table.',
  outsideCohorts: 'Eyes that belong to no cohort are counted among all eyes only.',
  altLead: 'Flow of eyes. ',
  altStep: (label: string, count: string) => `${label} ${count}`,
} as const;

const differences = {
  title: (cohorts: string) => `Differences between cohorts: ${cohorts}`,
  pair: (compared: string, reference: string) => `${compared} − ${reference}`,
  /** Heads of panels by the unit of their differences; another unit stands for itself. */
  units: { share: 'Percentage points', D: 'Dioptres', deg: 'Degrees', logMAR: 'logMAR' } as Readonly<
    Record<string, string>
  >,
  ratio: 'Ratio, logarithmic scale',
  effect: 'Probability of the larger value',
  estimate: 'Estimate (CI)',
  betterLeft: (cohort: string) => `← ${cohort} better`,
  betterRight: (cohort: string) => `${cohort} better →`,
  lower: (cohort: string) => `← ${cohort} lower`,
  /** The other side of the line, where the cohort is named already. */
  higher: 'higher →',
  compared: 'compared',
  levels: (primary: string, level: string) =>
    primary === level
      ? `Bold, filled: primary, with a verdict. Intervals: ${level}.`
      : `Bold, filled: primary, with a verdict; ${primary} intervals. The others: ${level}.`,
  exploratory: (level: string) => `Intervals: ${level}.`,
  margin: 'Shaded: within the margin.',
  legend:
    'Each line is one outcome: its difference, or ratio, between the compared cohort and the reference with its ' +
    'confidence interval, patients with two eyes accounted for. The upright line is no difference. Only primary ' +
    'outcomes bear a verdict. Shift: median of all differences between an eye of one cohort and one of the other. ' +
    'Differences of centroids, and further outcomes, stand in the comparison table.',
  eyes: (pair: string, least: string, most: string) =>
    least === most ? `${pair}: ${most} eyes in each comparison.` : `${pair}: ${least} to ${most} eyes in a comparison.`,
  altLead: 'Differences between cohorts. ',
  altPrimary: (outcome: string) => `${outcome} (primary)`,
  altEstimate: (outcome: string, estimate: string) => `${outcome} ${estimate}`,
  verdict: (estimate: string, verdict: string) => `${estimate}, ${verdict}`,
} as const;

/** English words: charts. */
export const charts = {
  standing: standingCharts,
  eyes,
  sample: (eyeCount: string, patientCount: string) => `n = ${eyes(eyeCount)} (${patients(patientCount)})`,
  shortSample: (eyeCount: string) => `n = ${eyeCount}`,
  missing: (count: string) => `${count} missing`,
  visit: (visit: string, days: string) => `Visit: ${visit}; ${days}`,
  days: (median: string, min: string, max: string) => `median ${median} days after surgery (${min} to ${max})`,
  daysUnknown: 'days after surgery not given',
  legendVisit: (visit: string) => `Outcome visit: ${visit}.`,
  legendSample: (cohort: string, sample: string, missing: string) => `${cohort}: ${sample}, ${missing}.`,
  suppressed: (least: string) => `Counts below ${least}, and those that would give them away, are not shown.`,
  tooManyCohorts: 'All eyes together: this chart tells at most four cohorts apart; the tables have every cohort.',
  /** One group in words, for readers who do not see the picture. */
  told: (group: string, what: string) => `${group}: ${what}.`,
  /** A group within a group: 'manual, corrected, after'. */
  within: (group: string, part: string) => `${group}, ${part}`,
  /** One panel of a figure. */
  panel: (letter: string, text: string) => `(${letter}) ${text}`,
  hidden: 'hidden',
  noInterval: 'no interval',
  errors,
  signedQuantities,
  histogram,
  accuracyShares,
  acuityCumulative,
  doubleAngle,
  cylinderShares,
  differences,
  eyeFlow,
} as const;
