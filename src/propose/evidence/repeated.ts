import { numbersAt, placedAs } from '../eye-rows.js';
import type { Placed } from '../placed.js';
import { type SurveyedFile, surveyed } from './surveyed.js';

/** Eyes that both columns must have, and share of them whose values agree, for the columns to be one. */
const least = 5;
const mostly = 0.9;

/** Values of a column by 'patient|side'. */
function valuesOf(one: SurveyedFile, column: Placed): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const eyeOf = one.eyeOf(column.context.side);
  const value = numbersAt(one.of.file, column.index);
  for (let row = 0; eyeOf && row < one.of.file.rows; row++) {
    const eye = eyeOf(row);
    if (eye !== undefined && !Number.isNaN(value(row))) found.set(eye, value(row));
  }
  return found;
}

function areSame(a: ReadonlyMap<string, number>, b: ReadonlyMap<string, number>): boolean {
  let [both, alike] = [0, 0];
  for (const [eye, value] of a) {
    const other = b.get(eye);
    if (other === undefined) continue;
    both++;
    if (Math.abs(value - other) <= 0.005) alike++;
  }
  return both >= least && alike >= mostly * both;
}

/** The column that gives the operation's own prediction. */
function plannedOf(files: readonly SurveyedFile[]): { file: SurveyedFile; column: Placed } | undefined {
  for (const file of files) {
    const surgical = placedAs(file.of, 'surgery_date') ?? placedAs(file.of, 'lens_power');
    const column = surgical && file.of.placed.find(({ term, by }) => term === 'predicted_se' && by === 'header');
    if (column) return { file, column };
  }
  return undefined;
}

/** Files without the columns of predictions that another file's list of operations gives as its own. */
export function withoutRepeats(files: readonly SurveyedFile[]): readonly SurveyedFile[] {
  const planned = plannedOf(files);
  if (!planned) return files;
  const own = valuesOf(planned.file, planned.column);
  return files.map((one) => {
    if (one === planned.file) return one;
    const repeated = one.of.placed.filter(
      (column) => column.term === 'predicted_se' && areSame(valuesOf(one, column), own),
    );
    if (repeated.length === 0) return one;
    const placed = one.of.placed.filter((column) => !repeated.includes(column));
    const left = [...one.of.left, ...repeated.map(({ index, term }) => ({ index, term, why: 'repeated' as const }))];
    return surveyed({ ...one.of, placed, left }, one.eyes);
  });
}
