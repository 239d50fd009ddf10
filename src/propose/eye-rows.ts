import { dateInOrder, splitDate } from '../intake/date.js';
import { type Laterality, type LateralityWords, parseLaterality } from '../intake/laterality.js';
import { parseRefraction } from '../intake/refraction-cell.js';
import type { Days } from '../units.js';
import { columnOf, type ExportedFile } from './exported.js';
import type { Placed, RecognisedFile } from './placed.js';
import { numberIn } from './profile.js';
import type { Term } from './vocabulary/vocabulary.js';

/** Which eye a row is of: 'patient|right'; undefined where the row does not say. */
export type EyeOfRow = (row: number) => string | undefined;

/** The column of a term, in a visit's and eye's part of the header where one is asked for. */
export function placedAs({ placed }: Pick<RecognisedFile, 'placed'>, term: Term, like?: Placed): Placed | undefined {
  return placed.find(
    (one) =>
      one.term === term &&
      (!like || (one.context.visit?.name === like.context.visit?.name && one.context.side === like.context.side)),
  );
}

/** Numbers of a column by row; NaN where there is none. */
export function numbersAt(file: ExportedFile, index: number): (row: number) => number {
  const { words, codes } = columnOf(file, index);
  const values = Float64Array.from(words, (word) => (file.isMissing(word) ? Number.NaN : numberIn(word, file.decimal)));
  return (row) => values[codes[row] as number] as number;
}

/** Dates of a column by row, as days since 1970-01-01; undefined where there is none, or their order is open. */
export function daysAt(file: ExportedFile, index: number): (row: number) => Days | undefined {
  const { words, codes } = columnOf(file, index);
  const order = file.dateOrder === 'none' ? 'year-first' : file.dateOrder;
  const days = words.map((word) => {
    const written = splitDate(word);
    return written && order && dateInOrder(written, order);
  });
  return (row) => days[codes[row] as number];
}

/** The patient of each row; undefined where the row names none. */
export function patientAt(of: RecognisedFile): ((row: number) => string | undefined) | undefined {
  const patient = placedAs(of, 'patient');
  if (!patient) return undefined;
  const { words, codes } = columnOf(of.file, patient.index);
  const names = words.map((word) => (of.file.isMissing(word) ? undefined : word.trim()));
  return (row) => names[codes[row] as number];
}

/**
 * The eye of each row.
 *
 * @param words  words for the eyes that need to be declared
 * @param side   the eye of a column whose header names one
 */
export function eyeAt(of: RecognisedFile, words: LateralityWords = {}, side?: Laterality): EyeOfRow | undefined {
  const patient = patientAt(of);
  const eye = placedAs(of, 'eye');
  if (!patient) return undefined;
  const keyed = (name: string | undefined, laterality: string | undefined): string | undefined =>
    name === undefined || laterality === undefined || laterality === 'both' ? undefined : `${name}|${laterality}`;
  if (side) return (row) => keyed(patient(row), side);
  if (!eye) return undefined;
  const column = columnOf(of.file, eye.index);
  const sides = column.words.map((word) => parseLaterality(word, words));
  return (row) => keyed(patient(row), sides[column.codes[row] as number]);
}

/** Sphere, cylinder and axis by row, as recorded; NaN where there is none. */
export interface RefractionCells {
  sphere(row: number): number;
  cylinder(row: number): number;
  axis(row: number): number;
}

const nothing = (): number => Number.NaN;

/** The refraction that a cylinder's column belongs to, or that one column holds. */
export function refractionAt(of: RecognisedFile, one: Placed): RefractionCells {
  if (one.term !== 'refraction') {
    const [sphere, axis] = ['sphere', 'axis'].map((term) => placedAs(of, term, one));
    const cells = (column: Placed | undefined) => (column ? numbersAt(of.file, column.index) : nothing);
    return { sphere: cells(sphere), cylinder: cells(one), axis: cells(axis) };
  }
  const { words, codes } = columnOf(of.file, one.index);
  const read = words.map((word) => parseRefraction(word, of.file.decimal));
  const at = (row: number) => read[codes[row] as number];
  return {
    sphere: (row) => at(row)?.sphere ?? Number.NaN,
    cylinder: (row) => at(row)?.cylinder ?? Number.NaN,
    axis: (row) => at(row)?.axis ?? Number.NaN,
  };
}
