import type { ColumnTable } from 'arquero';
import { categoriesOf, fitNumbersOf, hasColumn } from '../columns/table.js';
import { lensField } from '../predictions/recomputed.js';
import { millionths } from '../units.js';

/** The family of most eyes; of equals the one that comes first. */
function largest(counts: ReadonlyMap<number, number>): number {
  let [found, most] = [0, 0];
  for (const [family, count] of counts) {
    if (count > most || (count === most && family < found)) [found, most] = [family, count];
  }
  return found;
}

/**
 * Whether the lens constant of each eye is that of another lens family: one constant stands for one family, the one that
 * most of its eyes have. A family is `lens_family`, else `lens_model`.
 *
 * @returns 1 or 0; NaN where the constant or the family is not recorded. Undefined where no export has both
 * @source definition
 */
export function constantOfOtherFamily(eyes: ColumnTable): Float64Array | undefined {
  const field = lensField({ eyes });
  if (!field || !hasColumn(eyes, 'lens_constant')) return undefined;
  const { codes } = categoriesOf(eyes, field);
  const constants = fitNumbersOf(eyes, 'lens_constant').map(millionths);
  const counts = new Map<number, Map<number, number>>();
  constants.forEach((constant, eye) => {
    const family = codes[eye] as number;
    if (Number.isNaN(constant) || family === 0) return;
    const of = counts.get(constant) ?? new Map<number, number>();
    counts.set(constant, of.set(family, (of.get(family) ?? 0) + 1));
  });
  const owner = new Map([...counts].map(([constant, of]) => [constant, largest(of)]));
  return constants.map((constant, eye) => {
    const family = codes[eye] as number;
    if (Number.isNaN(constant) || family === 0) return Number.NaN;
    return owner.get(constant) === family ? 0 : 1;
  });
}
