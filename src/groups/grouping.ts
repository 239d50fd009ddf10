import type { CategoryColumn } from '../columns/category-column.js';
import type { Grouping } from '../records/derived.js';
import { bandNames, bandOf } from './bands.js';

/** The name under which eyes without a value of the group's field stand. */
export const missingGroup = '(missing)';

function grouping(field: string, names: readonly string[], eyes: number, codeOf: (eye: number) => number): Grouping {
  const code = new Int32Array(eyes);
  let anyMissing = false;
  for (let eye = 0; eye < eyes; eye++) {
    const index = codeOf(eye);
    if (index < 0) anyMissing = true;
    code[eye] = index < 0 ? names.length + 1 : index + 1;
  }
  return { field, names: anyMissing ? [...names, missingGroup] : names, code };
}

/** Groups by a named value; names in the order of UTF-16 units, eyes without one last. */
export function groupByCategory(field: string, column: CategoryColumn): Grouping {
  const names = column.names.slice(1).sort();
  const rank = column.names.map((name) => names.indexOf(name));
  return grouping(field, names, column.length, (eye) => rank[column.codes[eye] as number] as number);
}

/** Groups by bands of a number. @param edges  ascending, see `bandOf` */
export function groupByBand(field: string, values: Float64Array, edges: readonly number[]): Grouping {
  return grouping(field, bandNames(edges), values.length, (eye) => bandOf(values[eye] as number, edges));
}

/** Groups by a whole number, such as the year of surgery. */
export function groupByNumber(field: string, values: Float64Array): Grouping {
  const distinct = [...new Set(values)].filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  const rank = new Map(distinct.map((value, i) => [value, i]));
  return grouping(field, distinct.map(String), values.length, (eye) => rank.get(values[eye] as number) ?? -1);
}

/**
 * The same groups in another order, some of them left out: eyes of a name that is not listed belong to none.
 */
export function reordered(groups: Grouping, names: readonly string[]): Grouping {
  const code = groups.code.map((old) => names.indexOf(groups.names[old - 1] ?? '') + 1);
  return { field: groups.field, names, code };
}

/** Eyes in each group, in the order of its names. */
export function groupSizes({ names, code }: Grouping): readonly number[] {
  const sizes = new Array<number>(names.length).fill(0);
  for (const index of code) if (index > 0) sizes[index - 1] = (sizes[index - 1] as number) + 1;
  return sizes;
}
