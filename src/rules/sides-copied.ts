import { eyeNumbers } from '../eligibility/lookup.js';
import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import { pairsOfEyes } from './fellow.js';
import { eyePlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';

/** What two eyes never share to the last digit: length, both powers of the cornea, and the chamber where it is known. */
function biometry({ tables, assembly }: RuleContext): { needed: Float64Array[]; further: Float64Array[] } {
  const cornea = examsOf(tables, 'keratometries');
  const rows = assembly().before.keratometries;
  const ofEye = (values: Float64Array): Float64Array => Float64Array.from(rows, (row) => values[row] ?? Number.NaN);
  const length = eyeNumbers(tables.eyes, 'axial_length');
  const chamber = eyeNumbers(tables.eyes, 'acd');
  const powers = [ofEye(cornea.numbers('flat')), ofEye(cornea.numbers('steep'))];
  return { needed: length ? [length, ...powers] : [], further: chamber ? [chamber] : [] };
}

/** Two eyes of one patient with the same biometry in every value: one was copied to the other. */
export const sidesCopied: Rule = {
  id: 'sides-copied',
  judge(context) {
    const { needed, further } = biometry(context);
    if (needed.length === 0) return;
    const place = eyePlace(context);
    for (const [right, left] of pairsOfEyes(context.tables)) {
      const same = (values: Float64Array): boolean => {
        return millionths(values[right] as number) === millionths(values[left] as number);
      };
      const bothBlank = (values: Float64Array): boolean => [right, left].some((eye) => Number.isNaN(values[eye]));
      if (!needed.every(same) || !further.every((values) => bothBlank(values) || same(values))) continue;
      const at = place(left, 'axial_length');
      context.report(
        { rule: 'sides-copied', severity: 'query', ...at, effect: 'kept' },
        { table: 'eyes', row: left, field: 'axial_length', as: 'queried' },
      );
    }
  },
};
