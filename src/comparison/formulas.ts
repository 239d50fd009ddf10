import { pick } from '../analysis/sample.js';
import type { ResultRow } from '../records/result.js';
import { mcNemarMidP } from '../statistics/cohorts/mid-p.js';
import { tTwoSided } from '../statistics/distributions.js';
import { fewestPatients } from '../statistics/estimate.js';
import { meanInterval, meanVariance } from '../statistics/mean.js';
import { meanOf } from '../statistics/moments.js';
import { morganPitman } from '../statistics/morgan-pitman.js';
import { indexPatients, type PatientIndex } from '../statistics/patients.js';
import { isWithin } from '../statistics/within.js';
import { type About, estimated, rowAbout, testRows } from './rows.js';

/** Prediction errors of two formulas, of the same eyes. */
export interface SameEyes {
  formula: Float64Array;
  /** Of the primary formula, which the other is compared with. */
  primary: Float64Array;
  patients: PatientIndex;
}

/** Limit of the share that formulas are compared by, dioptres. */
const limit = 0.5;

/** One way to compare formulas: the difference of each eye, and the textbook test of independent eyes. */
interface Criterion {
  statistic: string;
  unit: string;
  /** Formula − primary of each eye: negative means less spread or error, and, of the share, fewer eyes within. */
  difference(eyes: SameEyes): Float64Array;
  textbook: string;
  textbookP(eyes: SameEyes): number | undefined;
}

function differenceOf(a: Float64Array, b: Float64Array, of: (error: number) => number): Float64Array {
  return a.map((error, eye) => of(error) - of(b[eye] as number));
}

/** Squares of errors less the mean of their formula: what each eye adds to the spread. */
function squares(errors: Float64Array): Float64Array {
  const centre = meanOf(errors) ?? 0;
  return errors.map((error) => (error - centre) ** 2);
}

function discordant({ formula, primary }: SameEyes): number {
  const only = (a: Float64Array, b: Float64Array): number =>
    a.reduce((n, error, eye) => n + (isWithin(error, limit) && !isWithin(b[eye] as number, limit) ? 1 : 0), 0);
  return mcNemarMidP(only(formula, primary), only(primary, formula));
}

const criteria: readonly Criterion[] = [
  {
    statistic: 'formula_difference_spread',
    unit: 'D²',
    difference: ({ formula, primary }) => differenceOf(squares(formula), squares(primary), (square) => square),
    textbook: 'morgan-pitman-hc4',
    textbookP: ({ formula, primary }) => morganPitman(formula, primary)?.p,
  },
  {
    statistic: 'formula_difference_absolute',
    unit: 'D',
    difference: ({ formula, primary }) => differenceOf(formula, primary, Math.abs),
    textbook: '',
    textbookP: () => undefined,
  },
  {
    statistic: 'formula_difference_share_within_0.50',
    unit: 'share',
    difference: ({ formula, primary }) => differenceOf(formula, primary, (error) => (isWithin(error, limit) ? 1 : 0)),
    textbook: 'mcnemar-mid-p',
    textbookP: discordant,
  },
];

/** Eyes with both errors. */
export function sameEyes(
  formula: Float64Array,
  primary: Float64Array,
  patient: Int32Array,
  eyes: Int32Array,
): SameEyes {
  const both = eyes.filter((eye) => Number.isFinite(formula[eye]) && Number.isFinite(primary[eye]));
  return {
    formula: pick(formula, both),
    primary: pick(primary, both),
    patients: indexPatients(both.map((eye) => patient[eye] as number)),
  };
}

/** Rows of one way to compare a formula with the primary one, and the p that is adjusted. */
export interface FormulaRows {
  statistic: string;
  about: About;
  rows: readonly ResultRow[];
  p: number | undefined;
}

/** Mean difference over eyes with its patient-sum interval, and t on G − 1 degrees. */
function criterionRows(about: About, criterion: Criterion, eyes: SameEyes, confidence: number): FormulaRows {
  const { statistic, unit } = criterion;
  const { patients } = eyes;
  const differences = criterion.difference(eyes);
  const found = meanInterval(differences, patients, confidence);
  const variance = patients.count < fewestPatients ? 0 : meanVariance(differences, found.value as number, patients);
  const df = patients.count - 1;
  const p = variance > 0 ? tTwoSided((found.value as number) / Math.sqrt(variance), df) : undefined;
  const of = { n: found.n, patients: found.patients };
  const estimate = estimated(about, statistic, found, unit);
  const tested = testRows(about, statistic, { ...of, p, df: p === undefined ? undefined : df, test: found.method });
  return { statistic, about, rows: [estimate, ...tested, ...textbookRows(about, criterion, eyes)], p };
}

/** The textbook test stands beside it where every patient has one eye: only then are its eyes independent. */
function textbookRows(about: About, criterion: Criterion, eyes: SameEyes): readonly ResultRow[] {
  const { count, bilateral } = eyes.patients;
  const value = bilateral > 0 || count < fewestPatients ? undefined : criterion.textbookP(eyes);
  if (value === undefined) return [];
  const statistic = `p_textbook:${criterion.statistic}`;
  return [
    rowAbout(about, { n: eyes.formula.length, patients: count }, { statistic, value, method: criterion.textbook }),
  ];
}

/** A limit of a difference of shares, of which few eyes would let t go beyond all there is. */
const possible = (limit: number | undefined): number | undefined =>
  limit === undefined ? undefined : Math.min(1, Math.max(-1, limit));

/**
 * The same in one band of eyes: mean errors of both formulas, raw, and the differences with their intervals. No tests:
 * bands are looked at for a pattern, and one of several would differ by chance.
 */
export function bandRows(about: About, eyes: SameEyes, confidence: number): readonly ResultRow[] {
  const { formula, primary, patients } = eyes;
  const mean = (statistic: string, errors: Float64Array): ResultRow =>
    estimated(about, statistic, meanInterval(errors, patients, confidence), 'D');
  return [
    mean('same_eyes_mean', formula),
    mean('same_eyes_mean_primary', primary),
    ...criteria.map(({ statistic, unit, difference }) => {
      const row = estimated(about, statistic, meanInterval(difference(eyes), patients, confidence), unit);
      return unit === 'share' ? { ...row, ci_low: possible(row.ci_low), ci_high: possible(row.ci_high) } : row;
    }),
  ];
}

/**
 * One formula against the primary one on the eyes that have both errors: spread (squares of errors centred by
 * formula), absolute error, share within ±0.50 D.
 */
export function formulaRows(about: About, eyes: SameEyes, confidence: number): readonly FormulaRows[] {
  return criteria.map((criterion) => criterionRows(about, criterion, eyes, confidence));
}
