import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';

/** One bin of a histogram. */
export interface Bin {
  /** Edges in the unit of the measure; an open bin is infinite on one side. */
  from: number;
  to: number;
  row: ResultRow;
}

/** A bar: a bin with a place on the axis, and its height as a share of the eyes. */
export interface Bar {
  x: number;
  x2: number;
  share: number;
}

const binName = /^count_from_(.+)_to_(.+)$/;
const edge = (text: string): number =>
  text.endsWith('inf') ? (text.startsWith('-') ? -1 : 1) * Infinity : Number(text);

/**
 * The bins of a measure in one group, ascending.
 *
 * @example binsOf(results, 'prediction_error', 'all')[0] // { from: -Infinity, to: -2.125, row: … }
 */
export function binsOf(results: Results, measure: string, group: string): readonly Bin[] {
  return results.rows
    .filter((row) => row.measure === measure && row.group === group && binName.test(row.statistic))
    .map(({ statistic }) => {
      const [, from = '', to = ''] = binName.exec(statistic) ?? [];
      return { from: edge(from), to: edge(to), row: results.get(measure, group, statistic) };
    })
    .sort((a, b) => a.from - b.from);
}

/** Whether a bin has no end on one side. */
export function isOpen({ from, to }: Pick<Bin, 'from' | 'to'>): boolean {
  return from === -Infinity || to === Infinity;
}

/**
 * Where a bin is drawn; an open bin is as wide as any other, half a width apart.
 *
 * @param width  between the edges of a bin that has two
 */
export function extentOf({ from, to }: Pick<Bin, 'from' | 'to'>, width: number): readonly [from: number, to: number] {
  if (from === -Infinity) return [to - 1.5 * width, to - width / 2];
  return to === Infinity ? [from + width / 2, from + 1.5 * width] : [from, to];
}

/** Bars of the bins that have eyes; a count that is hidden or does not exist has none. */
export function barsOf(bins: readonly Bin[], width: number): readonly Bar[] {
  const space = width / 16;
  return bins.flatMap((bin) => {
    const [from, to] = extentOf(bin, width);
    const { value, n } = bin.row;
    return value ? [{ x: from + space, x2: to - space, share: value / n }] : [];
  });
}

/** The share at which the axis ends, and its ticks: round numbers, not far above the tallest bar. */
export function shareAxis(tallest: number): { top: number; ticks: readonly number[] } {
  const step = tallest > 0.5 ? 0.25 : tallest > 0.15 ? 0.1 : 0.05;
  const half = step / 2;
  const top = Math.max(step, Math.ceil(tallest / half - 1e-9) * half);
  return { top, ticks: Array.from({ length: 1 + Math.floor(top / step + 1e-9) }, (_, i) => i * step) };
}
