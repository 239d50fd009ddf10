import { limitText } from '../format/limit.js';
import type { ResultRow } from '../records/result.js';
import type { Limits } from '../statistics/estimate.js';
import type { PatientIndex } from '../statistics/patients.js';
import { type ShareEstimate, type ShareMethod, shareInterval } from '../statistics/share.js';
import { isWithin } from '../statistics/within.js';
import { millionths } from '../units.js';
import { borrowed } from './location.js';
import { countRow, estimateRow, rowOf, type Sample } from './sample.js';

/** Which eyes count, of whom, and by which interval. */
export interface ShareOf {
  /** Statistic name of the share. */
  share: string;
  /** Statistic name of its numerator. */
  count: string;
  hits: Uint8Array;
  patients: PatientIndex;
  method: ShareMethod;
}

/** A share, its numerator, and the design effect behind its interval. */
export function shareRows(sample: Sample, { share, count, hits, patients, method }: ShareOf): readonly ResultRow[] {
  const auditIcc = borrowed(sample, share, hits, patients);
  const estimate = shareInterval(hits, patients, sample.confidence, { method, auditIcc });
  const { designEffect: deff, independent } = estimate;
  return [
    estimateRow(sample, share, estimate, 'share'),
    ...(independent ? [boundRow(sample, share, estimate, independent)] : []),
    { ...countRow(sample, count, estimate.count, hits.length), patients: patients.count },
    rowOf(sample, {
      statistic: `design_effect:${share}`,
      value: deff,
      n: hits.length,
      patients: patients.count,
      unit: '',
      method: 'anova',
      note: deff === undefined ? 'not-estimable:all-or-none' : '',
    }),
  ];
}

/** What the limits of a share of 0 or 1 would be if all eyes were independent: for the footnote. */
function boundRow(
  sample: Sample,
  share: string,
  { value, n, patients }: ShareEstimate,
  [low, high]: Limits,
): ResultRow {
  const limits = { value, ci_low: low, ci_high: high };
  return rowOf(sample, {
    statistic: `independent:${share}`,
    ...limits,
    n,
    patients,
    unit: 'share',
    method: 'independent-eyes',
  });
}

/** 1 where the value meets the test. */
export function hitsOf(values: Float64Array, meets: (value: number) => boolean): Uint8Array {
  const hits = new Uint8Array(values.length);
  // A loop, not `from`: that walks an iterator, several times slower over a registry.
  for (let i = 0; i < hits.length; i++) hits[i] = meets(values[i] as number) ? 1 : 0;
  return hits;
}

/** Shares of eyes whose magnitude is within each limit of the measure. */
export function withinRows(sample: Sample): readonly ResultRow[] {
  return (sample.measure.within ?? []).flatMap((limit) =>
    shareRows(sample, {
      share: `share_within_${limitText(limit)}`,
      count: `count_within_${limitText(limit)}`,
      hits: hitsOf(sample.absolute, (value) => isWithin(value, limit)),
      patients: sample.absolutePatients,
      method: 'wilson',
    }),
  );
}

/** Share of eyes beyond the limit that the measure names. */
export function beyondRows(sample: Sample): readonly ResultRow[] {
  const { beyond } = sample.measure;
  if (beyond === undefined) return [];
  return shareRows(sample, {
    share: `share_beyond_${limitText(beyond)}`,
    count: `count_beyond_${limitText(beyond)}`,
    hits: hitsOf(sample.absolute, (value) => !isWithin(value, beyond)),
    patients: sample.absolutePatients,
    method: 'wilson',
  });
}

/**
 * Index of a value's histogram bin: an edge value lies in the bin nearer zero.
 *
 * @param edges  ascending; bin 0 lies below the first, the last above the last
 */
export function binOf(value: number, edges: readonly number[]): number {
  const at = millionths(value);
  const passes = (edge: number): boolean => (at < 0 ? at >= millionths(edge) : at > millionths(edge));
  return edges.filter(passes).length;
}

/** Eyes in each bin of the measure's histogram. */
export function binRows(sample: Sample): readonly ResultRow[] {
  const { bins } = sample.measure;
  if (!bins) return [];
  const counts = new Array<number>(bins.length + 1).fill(0);
  for (const value of sample.values) {
    const bin = binOf(value, bins);
    counts[bin] = (counts[bin] as number) + 1;
  }
  const edge = (i: number): string => String(bins[i] ?? (i < 0 ? '-inf' : 'inf'));
  return counts.map((count, bin) => countRow(sample, `count_from_${edge(bin - 1)}_to_${edge(bin)}`, count));
}
