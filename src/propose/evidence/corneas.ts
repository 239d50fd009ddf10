import { keratometricPower, steepMeridian } from '../../optics/keratometry.js';
import type { Degree, Dioptre } from '../../units.js';
import { numbersAt, placedAs } from '../eye-rows.js';
import type { Placed } from '../placed.js';
import type { SurveyedFile } from './surveyed.js';

export interface Cornea {
  /** D. */
  cylinder: Dioptre;
  steep: Degree;
}

/** Below this a number is a radius in millimetres, not a power. */
const smallestPower = 20;

const inDioptres = (value: number): Dioptre => (value < smallestPower ? keratometricPower(value) : value);

/** Columns of one keratometry: two powers, and the axis of either. */
function corneaColumns({ of }: SurveyedFile, first: Placed): readonly (Placed | undefined)[] {
  const names = first.term === 'k1' ? ['k1_axis', 'k2', 'k2_axis'] : ['k_flat_axis', 'k_steep', 'k_steep_axis'];
  return [first, ...names.map((name) => placedAs(of, name, first))];
}

/** The last cornea that any file gives of each eye, by 'patient|side'. */
export function corneasOf(files: readonly SurveyedFile[]): ReadonlyMap<string, Cornea> {
  const found = new Map<string, Cornea>();
  for (const one of files) {
    for (const first of one.of.placed.filter(({ term }) => term === 'k1' || term === 'k_flat')) {
      const columns = corneaColumns(one, first);
      const eyeOf = one.eyeOf(first.context.side);
      if (!eyeOf || !columns[2] || (!columns[1] && !columns[3])) continue;
      const [k1, axis1, k2, axis2] = columns.map((column) =>
        column ? numbersAt(one.of.file, column.index) : () => Number.NaN,
      );
      for (let row = 0; row < one.of.file.rows; row++) {
        const eye = eyeOf(row);
        const [a, b] = [inDioptres(k1?.(row) ?? Number.NaN), inDioptres(k2?.(row) ?? Number.NaN)];
        const steep = steepMeridian(a, axis1?.(row) ?? Number.NaN, b, axis2?.(row) ?? Number.NaN);
        if (eye !== undefined && !Number.isNaN(steep)) found.set(eye, { cylinder: Math.abs(a - b), steep });
      }
    }
  }
  return found;
}

/** Eyes that have a toric lens: their refraction does not follow the cornea. */
export function toricEyes(files: readonly SurveyedFile[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const one of files) {
    const cylinder = placedAs(one.of, 'lens_cylinder');
    const eyeOf = cylinder && one.eyeOf(cylinder.context.side);
    const power = cylinder && numbersAt(one.of.file, cylinder.index);
    for (let row = 0; eyeOf && power && row < one.of.file.rows; row++) {
      const eye = eyeOf(row);
      if (eye !== undefined && Math.abs(power(row)) > 0) found.add(eye);
    }
  }
  return found;
}

/** The refraction that each eye was meant to have, D: predicted, or else aimed at. */
export function aimsOf(files: readonly SurveyedFile[]): ReadonlyMap<string, Dioptre> {
  const found = new Map<string, Dioptre>();
  for (const term of ['target_se', 'predicted_se']) {
    for (const one of files) {
      const column = placedAs(one.of, term);
      const eyeOf = column && one.eyeOf(column.context.side);
      const aim = column && numbersAt(one.of.file, column.index);
      for (let row = 0; eyeOf && aim && row < one.of.file.rows; row++) {
        const eye = eyeOf(row);
        if (eye !== undefined && !Number.isNaN(aim(row))) found.set(eye, aim(row));
      }
    }
  }
  return found;
}
