import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import type { Range } from './field-limit.js';
import { limitsOf } from './limits.js';
import { examPlace } from './places.js';
import type { Rule } from './rule.js';

const isOutside = (value: number, [low, high]: Range): boolean =>
  millionths(value) < millionths(low) || millionths(value) > millionths(high);

/** A cornea before surgery so flat, steep or toric that it is commonly measured again. */
export const keratometryRemeasure: Rule = {
  id: 'keratometry-remeasure',
  judge(context) {
    const cornea = examsOf(context.tables, 'keratometries');
    const [flat, steep] = [cornea.numbers('flat'), cornea.numbers('steep')];
    const judged = [
      { field: 'k_mean', of: (row: number) => ((flat[row] as number) + (steep[row] as number)) / 2 },
      { field: 'k_cylinder', of: (row: number) => (steep[row] as number) - (flat[row] as number) },
    ].flatMap((one) => {
      const usual = limitsOf(one.field, context.plan)?.usual;
      return usual ? [{ ...one, usual }] : [];
    });
    const placeOf = examPlace(context);
    for (const row of context.assembly().before.keratometries) {
      const unusual = row < 0 ? undefined : judged.find(({ of, usual }) => isOutside(of(row), usual));
      if (!unusual) continue;
      const at = { ...placeOf(cornea, row), field: unusual.field, detail: unusual.of(row) };
      context.report({ rule: 'keratometry-remeasure', severity: 'note', ...at, effect: 'kept' });
    }
  },
};
