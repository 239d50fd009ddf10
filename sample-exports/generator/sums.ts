/** The few sums that the expected values need; nothing here is shared with the project under test. */

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Divisor n − 1. */
export function standardDeviation(values: readonly number[]): number {
  const centre = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}

/** Share of the variance that lies between patients, by one-way analysis of variance with unequal groups. */
export function correlation(groups: ReadonlyMap<string, readonly number[]>): number {
  const lists = [...groups.values()];
  const all = lists.flat();
  const centre = mean(all);
  const between = lists.reduce((sum, list) => sum + list.length * (mean(list) - centre) ** 2, 0) / (lists.length - 1);
  const inside = lists.flatMap((list) => list.map((value) => (value - mean(list)) ** 2));
  const within = inside.reduce((sum, value) => sum + value, 0) / (all.length - lists.length);
  const squares = lists.reduce((sum, list) => sum + list.length ** 2, 0) / all.length;
  const size = (all.length - squares) / (lists.length - 1);
  return (between - within) / (between + (size - 1) * within);
}

/** Share of values whose size is at most `limit`; the limit itself counts, whatever the last binary digit says. */
export function shareWithin(values: readonly number[], limit: number): number {
  return values.filter((value) => Math.abs(value) <= limit + 1e-6).length / values.length;
}
