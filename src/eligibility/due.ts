import { integersOf } from '../columns/table.js';
import { type CanonicalTables, noDay } from '../records/canonical.js';

/**
 * Eyes that are due: the window has closed by the export's day. Without dates all are.
 *
 * @param last  last day of the window, days after surgery
 * @returns one number an eye, in canonical order: 1 due, 0 not yet
 */
export function dueBy({ eyes, dataUntil }: Pick<CanonicalTables, 'eyes' | 'dataUntil'>, last: number): Uint8Array {
  const surgery = integersOf(eyes, 'surgeryDay');
  const isDue = (day: number): boolean => dataUntil === noDay || day === noDay || day + last <= dataUntil;
  return Uint8Array.from(surgery, (day) => (isDue(day) ? 1 : 0));
}
