import { reaching } from '../analysis/acuity.js';
import { limitText } from '../format/limit.js';
import type { Measure } from '../records/measure.js';
import { isWithin } from '../statistics/within.js';

/** How two cohorts are compared by one statistic. */
type Estimator = 'mean' | 'spread' | 'effect' | 'shift' | 'risk' | 'risk-ratio' | 'centroid';

/**
 * Which values it stands on: those that are measured (an acuity of light perception is a rank, no value); every value,
 * ranks included; those that serve absolute errors; the size of these without sign.
 */
export type Basis = 'measured' | 'values' | 'absolute' | 'magnitudes';

export type Better = 'higher' | 'lower';

/** One statistic by which cohorts are compared. */
export interface Compared {
  /** Statistic of the comparison: 'difference_mean'. */
  statistic: string;
  /** The statistic of one group that it compares, as audit.yaml may name it too; '' where there is none. */
  of: string;
  by: Estimator;
  on: Basis;
  /** Which way the better cohort lies; undefined where neither is better by itself. */
  better: Better | undefined;
  /** For shares: which values count. */
  meets: ((value: number) => boolean) | undefined;
}

/** The direction of a measure that has one; a signed error has none, its size has. */
function directionOf({ better }: Measure): Better | undefined {
  return better === 'nearer zero' ? undefined : better;
}

function statistic(by: Estimator, on: Basis, better: Better | undefined, name: string, of: string): Compared {
  return { statistic: name, of, by, on, better, meets: undefined };
}

/** Difference and ratio of one share. */
function shares(of: string, on: Basis, better: Better | undefined, meets: (value: number) => boolean): Compared[] {
  return [
    { statistic: `difference_${of}`, of, by: 'risk', on, better, meets },
    { statistic: `ratio_${of}`, of: '', by: 'risk-ratio', on, better, meets },
  ];
}

/** Mean, and for what is no acuity the spread: that of an error is better small, any other is only told. */
function location(measure: Measure): Compared[] {
  const mean = statistic('mean', 'measured', directionOf(measure), 'difference_mean', 'mean');
  if (measure.lines) return [mean];
  const better = measure.better === 'nearer zero' ? 'lower' : undefined;
  return [mean, statistic('spread', 'measured', better, 'ratio_sd', 'sd')];
}

function skewed(on: Basis, better: Better | undefined, suffix: string, median: string): Compared[] {
  return [
    statistic('effect', on, better, `relative_effect${suffix}`, ''),
    statistic('shift', on, better, `shift${suffix}`, median),
  ];
}

/** Sizes of signed errors, and values that are skewed by their nature. */
function byRank(measure: Measure): Compared[] {
  if (measure.better === 'nearer zero') return skewed('magnitudes', 'lower', '_absolute', 'median_absolute');
  return measure.kind === 'skewed' ? skewed('values', directionOf(measure), '', 'median') : [];
}

function sharesWithin({ within = [], better }: Measure): Compared[] {
  const inside = better === undefined ? undefined : better === 'higher' ? 'lower' : 'higher';
  return within.flatMap((limit) =>
    shares(`share_within_${limitText(limit)}`, 'absolute', inside, (value) => isWithin(value, limit)),
  );
}

function sharesReached({ lines = [] }: Measure): Compared[] {
  return lines.flatMap((line) => shares(`share_at_or_better_${line}`, 'values', 'higher', reaching(line)));
}

/**
 * Every statistic by which cohorts are compared in one measure, from what the registry says of it: the one table of
 * estimators and directions.
 *
 * @returns none for a category, for what eyes were before surgery, and for the time at which they were seen
 * @example comparedBy(anyComplication).map(({ statistic }) => statistic) // ['difference_share', 'ratio_share']
 */
export function comparedBy(measure: Measure): readonly Compared[] {
  if (measure.role || measure.step || measure.unpooled || measure.vector?.component === 'y') return [];
  switch (measure.kind) {
    case 'category':
      return [];
    case 'vector':
      return [statistic('centroid', 'values', undefined, 'difference_centroid', 'centroid')];
    case 'share':
      return shares('share', 'values', directionOf(measure), (value) => value === 1);
    default:
      return [
        ...(measure.kind === 'skewed' ? [] : location(measure)),
        ...byRank(measure),
        ...sharesWithin(measure),
        ...sharesReached(measure),
      ];
  }
}

/** Names under which audit.yaml may speak of a statistic: that of one group, and that of the comparison. */
export function namesOf({ of, statistic }: Compared): readonly string[] {
  return of === '' ? [statistic] : [of, statistic];
}

/** Whether a statistic is a ratio, worked with on its logarithm. */
export function isRatio({ by }: Compared): boolean {
  return by === 'spread' || by === 'risk-ratio';
}
