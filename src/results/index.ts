import type { ResultRow } from '../records/result.js';

/** Results by key. Asking for a row that is not there is a mistake in our code and fails the run. */
export interface Results {
  rows: readonly ResultRow[];
  get(measure: string, group: string, statistic: string): ResultRow;
  find(measure: string, group: string, statistic: string): ResultRow | undefined;
}

/** The key under which tables, figures and the manifest cite a row. */
export function resultKey(row: Pick<ResultRow, 'measure' | 'group' | 'statistic'>): string {
  return `${row.measure}|${row.group}|${row.statistic}`;
}

/**
 * Index of results rows.
 *
 * @throws {RangeError} when two rows have one key
 */
export function indexResults(rows: readonly ResultRow[]): Results {
  const byKey = new Map<string, ResultRow>();
  for (const row of rows) {
    const key = resultKey(row);
    if (byKey.has(key)) throw new RangeError(`indexResults: two rows are called ${key}`);
    byKey.set(key, row);
  }
  const find = (measure: string, group: string, statistic: string): ResultRow | undefined =>
    byKey.get(resultKey({ measure, group, statistic }));
  return {
    rows,
    find,
    get(measure, group, statistic) {
      const row = find(measure, group, statistic);
      if (!row) throw new RangeError(`results: no row ${measure}|${group}|${statistic}`);
      return row;
    },
  };
}

const encoded: Readonly<Record<string, string>> = { '%': '%25', ';': '%3B', '=': '%3D' };

/** One `field=value` pair of a group; signs that have a meaning inside a group are percent-encoded. */
export function groupPair(field: string, value: string): string {
  const safe = value.replace(/[%;=]/g, (sign) => encoded[sign] ?? sign).replaceAll(' vs ', '%20vs%20');
  return `${field}=${safe}`;
}
