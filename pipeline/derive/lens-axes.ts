import { fitNumbersOf, hasColumn, integersOf, statesOf } from '../../src/columns/table.js';
import type { CanonicalTables } from '../../src/records/canonical.js';
import type { Assembly } from '../../src/visits/assemble.js';

/** Day of the first operation that turned the lens again, one an eye; beyond every other where there is none. */
export function firstRepositions(tables: CanonicalTables): Int32Array {
  const first = new Int32Array(tables.eyes.numRows()).fill(2 ** 31 - 1);
  const [eye, day] = [integersOf(tables.events, 'eye'), integersOf(tables.events, 'day')];
  const procedure = tables.events.column('procedure') as { at(row: number): string };
  eye.forEach((of, i) => {
    if (procedure.at(i) === 'reposition' && (day[i] as number) >= 0)
      first[of] = Math.min(first[of] as number, day[i] as number);
  });
  return first;
}

/** The last lens axis seen on a day that counts, one an eye; NaN where there is none. */
function lastAxis(tables: CanonicalTables, counts: (day: number, eye: number) => boolean): Float64Array {
  const { lensAxes } = tables.measurements;
  const axes = new Float64Array(tables.eyes.numRows()).fill(Number.NaN);
  const [eye, day, states] = [integersOf(lensAxes, 'eye'), integersOf(lensAxes, 'day'), statesOf(lensAxes)];
  const values = fitNumbersOf(lensAxes, 'axis');
  // Rows stand by eye, then by day: the later one stays.
  eye.forEach((of, row) => {
    if (
      of >= 0 &&
      (states[row] as number) < 2 &&
      !Number.isNaN(values[row] as number) &&
      counts(day[row] as number, of)
    )
      axes[of] = values[row] as number;
  });
  return axes;
}

/**
 * Axes of the lens that are chosen by a rule of their own: at the end of surgery (the surgery row, else an examination
 * of day 0), and at follow-up (the outcome's, but of a lens that was turned again the last one before that).
 *
 * @returns undefined for any other input
 */
export function lensInput(name: string, tables: CanonicalTables, assembly: Assembly): Float64Array | undefined {
  if (name === 'lens_axis_end') {
    const atEnd = lastAxis(tables, (day) => day === 0);
    if (!hasColumn(tables.eyes, name)) return atEnd;
    return fitNumbersOf(tables.eyes, name).map((axis, eye) => (Number.isNaN(axis) ? (atEnd[eye] as number) : axis));
  }
  if (name !== 'lens_axis@followup') return undefined;
  const turned = firstRepositions(tables);
  const before = lastAxis(tables, (day, eye) => day > 0 && day <= (turned[eye] as number));
  const values = fitNumbersOf(tables.measurements.lensAxes, 'axis');
  return Float64Array.from(assembly.outcome.lensAxes, (row, eye) => {
    if ((turned[eye] as number) < 2 ** 31 - 1) return before[eye] as number;
    return row < 0 ? Number.NaN : (values[row] as number);
  });
}
