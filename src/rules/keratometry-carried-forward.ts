import { millionths } from '../units.js';
import { examsOf, isAfter, isFit, rowsOfEye } from './exams.js';
import { examPlace } from './places.js';
import type { Rule } from './rule.js';

/**
 * K after surgery that is K before it, in both powers and the axis: it was carried forward. What surgery did to the
 * cornea cannot be told from it, so the later one is set aside.
 */
export const keratometryCarriedForward: Rule = {
  id: 'keratometry-carried-forward',
  judge(context) {
    const cornea = examsOf(context.tables, 'keratometries');
    const columns = ['flat', 'steep', 'steepAxis'].map(cornea.numbers);
    // Equal powers have no axis, and are no match.
    const isSame = (i: number, j: number): boolean =>
      columns.every((values) => millionths(values[i] as number) === millionths(values[j] as number));
    const isBefore = (j: number): boolean => isFit(cornea, j) && !isAfter(cornea, j) && cornea.day[j] !== 0;
    const placeOf = examPlace(context);
    for (let i = 0; i < cornea.length; i++) {
      if (!isFit(cornea, i) || !isAfter(cornea, i)) continue;
      const own = [...rowsOfEye(cornea, cornea.eye[i] as number)];
      if (!own.some((j) => isBefore(j) && isSame(i, j))) continue;
      const finding = { ...placeOf(cornea, i), effect: 'induced astigmatism left out' } as const;
      const mark = { table: 'keratometries', row: i, as: 'set aside' } as const;
      context.report({ rule: 'keratometry-carried-forward', severity: 'query', ...finding }, mark);
    }
  },
};
