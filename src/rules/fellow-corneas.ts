import { integersOf } from '../columns/table.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import { keratometricVectorX, keratometricVectorY } from '../optics/keratometry.js';
import { type CanonicalTables, noDay } from '../records/canonical.js';
import { type Exams, examsOf, isFit, rowsOfEye } from './exams.js';
import { pairsOfEyes } from './fellow.js';

/** How far two measurements of corneas are apart, dioptres: means, and half the difference of their astigmatism. */
export function distances(cornea: Exams): (i: number, j: number) => number {
  const [flat, steep, axis] = ['flat', 'steep', 'steepAxis'].map(cornea.numbers) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const all = [...flat.keys()];
  const mean = all.map((i) => ((flat[i] as number) + (steep[i] as number)) / 2);
  const x = all.map((i) => keratometricVectorX(flat[i] as number, steep[i] as number, axis[i] as number));
  const y = all.map((i) => keratometricVectorY(flat[i] as number, steep[i] as number, axis[i] as number));
  const apart = (of: readonly number[], i: number, j: number): number => (of[i] as number) - (of[j] as number);
  return (i, j) => vectorMagnitude(apart(mean, i, j), vectorMagnitude(apart(x, i, j), apart(y, i, j)) / 2);
}

/** The day of every measurement on one calendar: days from surgery are not those of the fellow eye. */
export function calendarDays({ eye, day }: Exams, { eyes }: CanonicalTables): Float64Array {
  const surgery = integersOf(eyes, 'surgeryDay');
  return Float64Array.from(day, (on, i) => {
    const operated = surgery[eye[i] as number] ?? noDay;
    return on === noDay || operated === noDay ? on : operated + on;
  });
}

/** A measurement that stands far from its own eye's others and near the fellow's. */
export interface Misplaced {
  row: number;
  /** Dioptres from the nearest other measurement of its own eye, and of the fellow eye. */
  own: number;
  fellow: number;
}

/** Of measurements that contradict each other only the later are named: nobody knows which of two is exchanged. */
export function latest<T extends { row: number }>(
  found: readonly T[],
  source: Int32Array,
  days: Float64Array,
): readonly T[] {
  const isLater = (a: number, b: number): boolean =>
    source[a] === source[b] ? (days[a] as number) > (days[b] as number) : (source[a] as number) > (source[b] as number);
  return found.filter(({ row }) => !found.some((other) => isLater(other.row, row)));
}

/**
 * Measurements of corneas that fit the fellow eye better than their own: at one examination right and left may have been
 * exchanged.
 *
 * @param limits  how far from the own eye, and how near the fellow, dioptres
 */
export function misplacedCorneas(
  tables: CanonicalTables,
  limits: { apart: number; near: number },
): readonly Misplaced[] {
  const cornea = examsOf(tables, 'keratometries');
  const [distance, days] = [distances(cornea), calendarDays(cornea, tables)];
  const isOneExam = (i: number, j: number): boolean => days[i] === days[j] && cornea.source[i] === cornea.source[j];
  const rowsOf = (eye: number): readonly number[] => [...rowsOfEye(cornea, eye)].filter((i) => isFit(cornea, i));
  // A measurement without an axis has no distance: NaN, which is neither far nor near.
  const nearest = (i: number, of: readonly number[]): number =>
    Math.min(...of.map((j) => distance(i, j)).filter((apart) => !Number.isNaN(apart)));
  return pairsOfEyes(tables).flatMap((pair) => {
    const rows = pair.map(rowsOf);
    const found = rows.flatMap((own, side) =>
      own.map((row): Misplaced => {
        const others = (rows[1 - side] as readonly number[]).filter((j) => !isOneExam(row, j));
        return {
          row,
          own: nearest(
            row,
            own.filter((j) => j !== row),
          ),
          fellow: nearest(row, others),
        };
      }),
    );
    const isFar = ({ own }: Misplaced): boolean => own > limits.apart && Number.isFinite(own);
    return latest(
      found.filter((one) => isFar(one) && one.fellow < limits.near),
      cornea.source,
      days,
    );
  });
}
