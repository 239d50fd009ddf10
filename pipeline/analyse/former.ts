import type { FormerRow } from '../../src/records/former-row.js';
import type { ResultRow } from '../../src/records/result.js';
import { squareAndAdd } from '../../src/statistics/cohorts/newcombe.js';

/** Numbers of the former report that are set beside this year's, where both have them with an interval. */
const compared = [
  'prediction_error|share_within_0.50',
  'prediction_error|share_within_1.00',
  'prediction_error|mean',
  'target_error|share_within_0.50',
  'target_error|share_within_1.00',
  'target_error|mean',
  'refractive_cylinder_after_recorded|share_within_0.50',
  'cdva|share_at_or_better_20/40',
  'udva|share_at_or_better_20/40',
  'any_complication|share',
  'endothelial_loss|geometric_mean',
] as const;

interface Bounded {
  share: number;
  low: number;
  high: number;
}

function bounded(row: Pick<ResultRow, 'value' | 'ci_low' | 'ci_high'> | undefined): Bounded | undefined {
  if (row?.value === undefined || row.ci_low === undefined || row.ci_high === undefined) return undefined;
  return { share: row.value, low: row.ci_low, high: row.ci_high };
}

/** Limits of a difference from the limits of its two parts, which are independent samples. */
function limitsOf(now: Bounded, then: Bounded, isShare: boolean): readonly [number, number] {
  if (isShare) return squareAndAdd(now, then, 0);
  const difference = now.share - then.share;
  return [
    difference - Math.hypot(now.share - now.low, then.high - then.share),
    difference + Math.hypot(now.high - now.share, then.share - then.low),
  ];
}

function isClear([low, high]: readonly [number, number]): string {
  if (low > 0) return 'verdict:higher';
  return high < 0 ? 'verdict:lower' : 'verdict:not-distinguishable';
}

/**
 * The former report as a second sample: what it said, and the difference with the interval that both years' limits give
 * (each holds that year's standard error and design effect).
 *
 * @param former  rows of its results.csv; undefined without one
 * @source square-and-add of two intervals: Newcombe 1998, Stat Med 17:873-890; Zou, Donner 2008 for means
 */
export function formerRows(rows: readonly ResultRow[], former: readonly FormerRow[] | undefined): readonly ResultRow[] {
  if (!former) return [];
  const at = <R extends FormerRow>(of: readonly R[], key: string): R | undefined => {
    const [measure, statistic] = key.split('|');
    return of.find((row) => row.measure === measure && row.statistic === statistic && row.group === 'all');
  };
  return compared.flatMap((key) => {
    const [now, then] = [at(rows, key), at(former, key)];
    const [a, b] = [bounded(now), bounded(then)];
    if (!now || !then || !a || !b) return [];
    const limits = limitsOf(a, b, now.unit === 'share');
    const about = { ...now, measure: `former:${now.measure}`, method: 'square-and-add-years', note: '' };
    return [
      { ...about, ...then, measure: about.measure, eyes: then.n, method: 'former-report' },
      {
        ...about,
        statistic: `difference_${now.statistic}`,
        value: a.share - b.share,
        ci_low: limits[0],
        ci_high: limits[1],
        n: now.n + then.n,
        eyes: now.n + then.n,
        patients: now.patients + then.patients,
        note: isClear(limits),
      },
    ];
  });
}
