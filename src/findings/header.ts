import type { ColumnPlan } from '../records/plan.js';

/** Where audit.yaml says a column stands. */
export type ColumnPlace = Pick<ColumnPlan, 'column' | 'position' | 'occurrence'>;

/** Header index of a column, or why there is none. */
export type Located = { index: number } | { index: undefined; why: 'missing' | 'twice' };

/** A header as it is compared: outer blanks and letter case do not matter, nor how an accent is composed. */
export function foldedHeader(header: string): string {
  return header.normalize('NFC').replace(/\s+/g, ' ').trim().toLowerCase();
}

/**
 * Finds a column that audit.yaml names in the header of a file.
 *
 * @param header  all headers as written
 * @param wanted  a header, with its occurrence where it is met twice, or a position counted from 1
 * @example locateColumn(['ID', 'Axis ', 'axis'], { column: 'Axis', position: undefined, occurrence: 2 }) // index 2
 */
export function locateColumn(header: readonly string[], wanted: ColumnPlace): Located {
  if (wanted.position !== undefined) {
    return wanted.position <= header.length ? { index: wanted.position - 1 } : { index: undefined, why: 'missing' };
  }
  const name = foldedHeader(wanted.column ?? '');
  const met = header.flatMap((one, index) => (foldedHeader(one) === name ? [index] : []));
  if (wanted.occurrence === undefined && met.length > 1) return { index: undefined, why: 'twice' };
  const index = met[(wanted.occurrence ?? 1) - 1];
  return index === undefined ? { index, why: 'missing' } : { index };
}
