import { integersOf } from '../columns/table.js';
import type { CanonicalTables, FieldReading } from '../records/canonical.js';
import { millionths } from '../units.js';
import { examsOf, isFit, rowsOfEye } from './exams.js';
import { calendarDays, distances, latest } from './fellow-corneas.js';
import { lengthsOf } from './fellow-lengths.js';

/** How far from the own eye's other values, and how near the other patient's, in the unit of the values. */
interface Limits {
  apart: number;
  near: number;
}

/** A value that stands far from what else is known of its eye. */
interface Stray {
  row: number;
  eye: number;
  /** How far. */
  own: number;
}

/** A stray with the row it was exchanged with. */
export interface Exchanged extends Stray {
  other: number;
}

/** So many strays are a habit of a file, and no slips: they are not compared one with another. */
const mostStrays = 1000;

/** Strays of two patients' eyes of one side of which each fits the other's eye. */
function mutual(
  strays: readonly Stray[],
  { eyes }: CanonicalTables,
  fits: (one: Stray, other: Stray) => boolean,
): readonly Exchanged[] {
  if (strays.length > mostStrays) return [];
  const [patient, side] = [integersOf(eyes, 'patient'), integersOf(eyes, 'laterality')];
  const mayBe = (a: number, b: number): boolean => patient[a] !== patient[b] && side[a] === side[b];
  return strays.flatMap((one) => {
    const other = strays.find((that) => mayBe(one.eye, that.eye) && fits(one, that) && fits(that, one));
    return other ? [{ ...one, other: other.row }] : [];
  });
}

/** Corneas of two patients that were exchanged at one examination; rows of the table, told in the file read later. */
export function exchangedCorneas(tables: CanonicalTables, limits: Limits): readonly Exchanged[] {
  const cornea = examsOf(tables, 'keratometries');
  const distance = distances(cornea);
  const rowsOf = (eye: number): readonly number[] => [...rowsOfEye(cornea, eye)].filter((i) => isFit(cornea, i));
  const nearest = (row: number, eye: number, besides: number): number =>
    Math.min(
      ...rowsOf(eye).flatMap((j) => (j === besides || Number.isNaN(distance(row, j)) ? [] : [distance(row, j)])),
    );
  const strays = [...cornea.eye.keys()]
    .filter((row) => isFit(cornea, row))
    .map((row): Stray => {
      const eye = cornea.eye[row] as number;
      return { row, eye, own: nearest(row, eye, row) };
    })
    .filter(({ own }) => own > limits.apart && Number.isFinite(own));
  const found = mutual(
    strays,
    tables,
    (one, other) =>
      cornea.source[one.row] === cornea.source[other.row] && nearest(one.row, other.eye, other.row) < limits.near,
  );
  const days = calendarDays(cornea, tables);
  return found.filter((one) => latest(ofOneEye(found, one), cornea.source, days).includes(one));
}

const ofOneEye = (found: readonly Exchanged[], { eye }: Exchanged) => found.filter((one) => one.eye === eye);

/** Lengths of two patients that one file exchanged; rows of that file, told in the file read later. */
export function exchangedLengths(
  tables: CanonicalTables,
  limits: Limits,
): readonly (Exchanged & { reading: FieldReading })[] {
  const files = tables.readings
    .filter(({ field }) => field === 'axial_length')
    .map((reading) => ({ reading, lengths: lengthsOf(reading) }));
  return files.flatMap(({ reading, lengths }, at) => {
    const elsewhere = (eye: number): number | undefined =>
      files
        .slice(0, at)
        .find((file) => file.lengths.has(eye))
        ?.lengths.get(eye)?.value;
    const here = (eye: number): number => lengths.get(eye)?.value ?? Number.NaN;
    const apart = (a: number, b: number): number => millionths(Math.abs(here(a) - (elsewhere(b) ?? Number.NaN)));
    const strays = [...lengths].flatMap(([eye, { row }]): readonly Stray[] =>
      apart(eye, eye) > millionths(limits.apart) ? [{ row, eye, own: elsewhere(eye) as number }] : [],
    );
    const found = mutual(strays, tables, (one, other) => apart(one.eye, other.eye) <= millionths(limits.near));
    return found.map((one) => ({ ...one, reading }));
  });
}
