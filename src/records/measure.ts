/** The sets of eyes that measures are analysed over; each has its own flow from operated to analysed. */
export const families = [
  'safety',
  'eligible',
  'refraction',
  'astigmatism',
  'cornea',
  'toric',
  'corrected',
  'distance',
  'uncorrected',
  'near_target',
  'near',
  'intermediate',
  'endothelium',
  'resources',
] as const;
export type Family = (typeof families)[number];

export type MeasureKind = 'continuous' | 'skewed' | 'vector' | 'share' | 'category';

/**
 * One quantity of one eye: the single place that names it, computes it and says where its definition comes
 * from. `derive` loops eyes over `of`; `trace` prints the same function's inputs and result; eyes.csv, the data
 * dictionary and the tables read their columns from the list.
 */
export interface Measure {
  /** `measure` in results.csv. A vector is two measures `<name>_x` and `<name>_y` under one `vector` name. */
  name: string;
  vector?: { name: string; component: 'x' | 'y' };
  family: Family;
  kind: MeasureKind;
  /** What eyes were before surgery, or when they were seen; absent: an outcome, which cohorts are compared by. */
  role?: 'baseline' | 'follow-up';
  better?: 'higher' | 'lower' | 'nearer zero';
  unit: 'D' | 'deg' | 'logMAR' | 'mm' | '%' | 'years' | 'months' | 'days' | 'min' | 's' | 'cells/mm²' | 'share' | '';
  plane?: 'spectacle' | 'cornea' | 'lens';
  /** Columns of the eye-level table, or earlier measures. */
  inputs: readonly string[];
  /** As trace and the data dictionary print it. */
  formula: string;
  /**
   * The formula as arithmetic, for `trace` to put an eye's numbers in: `{sphere@outcome}` stands for an input,
   * `{|target_induced|}` and `{@target_induced}` for magnitude and meridian of a vector whose two components are inputs.
   * A function where it depends on the eye. Absent: `trace` lists the inputs.
   */
  worked?: string | ((...inputs: number[]) => string);
  /** Paper, equation, or 'common practice, no source'. */
  source: string;
  /** 'all': in every subgroup too. */
  groupings: 'all' | 'cohorts';
  /** Limits of `share_within_…`, where the measure has such shares. */
  within?: readonly number[];
  /** A limit whose `share_beyond_…` is given as well. */
  beyond?: number;
  /** A ratio: its geometric mean is given; 'loss': of what is left, 1 − loss/100, told as a loss again. */
  geometric?: true | 'loss';
  /** A ratio of two acuities: `ratio_of_means` of these logMAR columns, as decimals, stands beside its geometric mean. */
  ratioOf?: readonly [numerator: string, denominator: string];
  /** A change of acuity: eyes by lines gained and lost are counted. */
  inLines?: true;
  /** Kind 'category': names behind the values 0, 1, 2 …, whose eyes are counted. */
  categories?: readonly string[];
  /** Left out of the registry of an audit in which no eye has its first input. */
  whereRecorded?: true;
  /** Groups of its own table, beside cohorts: fields of `Derived.strata`. */
  strata?: readonly string[];
  /** Given in its strata only, by cohort: all eyes together would mix what may not be mixed. Cohorts are not compared by it. */
  unpooled?: true;
  /** Compared, but told in results.csv alone: a part, or another view, of an outcome that stands in table and chart. */
  secondary?: true;
  /** Snellen lines of `share_at_or_better_…`, where the measure is an acuity. */
  lines?: readonly string[];
  /** The measure whose values serve absolute errors and shares, where a group must not become perfect by its own mean. */
  absoluteFrom?: string;
  /** Edges of the histogram bins `count_from_…_to_…`, ascending; two open bins stand outside them. */
  bins?: readonly number[];
  /** A step that a reader of `trace` wants to see; not analysed for itself. */
  step?: true;
  /** One value a patient (the first of the eyes), where the eyes of a patient share it. */
  per?: 'patient';
  /** Made in a second pass, when the group mean that is its last input is known. */
  second?: true;
  /** One eye; NaN where it does not exist. Pure, allocates nothing. */
  of(...inputs: number[]): number;
}
