import type { ResultRow } from '../../src/records/result.js';

/** A number, or a number with its limits. */
export type Shown = number | undefined | readonly [value: number, low: number, high: number];

/** What the rows of one measure and group have in common. */
export interface About {
  measure: string;
  group?: string;
  n: number;
  missing?: number;
  patients?: number;
  unit?: string;
  method?: string;
  note?: string;
}

/** Results rows as `analyse` would hand them over: one a statistic, made up in sight of the expectation. */
export function rowsOf(about: About, statistics: Readonly<Record<string, Shown>>): readonly ResultRow[] {
  const { measure, group = 'all', n, missing = 0, patients = n, unit = 'D', method = '', note = '' } = about;
  return Object.entries(statistics).map(([statistic, shown]) => {
    const [value, low, high] = typeof shown === 'object' ? shown : [shown, undefined, undefined];
    return {
      measure,
      group,
      statistic,
      value,
      ci_low: low,
      ci_high: high,
      n,
      eyes: n + missing,
      patients,
      unit,
      method,
      note,
    };
  });
}

/** The text of every cell of a row, by the start of its label; `nth` of several rows with one label, from 0. */
export function cellsOf(
  table: { rows: readonly { label: string; cells: readonly { text: string }[] }[] } | undefined,
  label: string,
  nth = 0,
): readonly string[] {
  const found = (table?.rows ?? []).filter((row) => row.label.startsWith(label))[nth];
  if (!found) throw new RangeError(`cellsOf: no row ${nth} is called "${label}"`);
  return found.cells.map(({ text }) => text);
}
