import type { ColumnTable } from 'arquero';
import type { CategoryColumn } from './category-column.js';

function column(table: ColumnTable, name: string): unknown {
  const found: unknown = table.column(name);
  if (found === undefined)
    throw new RangeError(`table has no column ${name}; it has ${table.columnNames().join(', ')}`);
  return found;
}

/** Whether a table has a column of this name. */
export function hasColumn(table: ColumnTable, name: string): boolean {
  return table.column(name) !== undefined;
}

/** The array behind a column of numbers, not a copy. @throws {RangeError} when it is no such column */
export function numbersOf(table: ColumnTable, name: string): Float64Array {
  const found = column(table, name);
  if (found instanceof Float64Array) return found;
  throw new RangeError(`numbersOf: ${name} is not a column of numbers`);
}

/** The array behind a column of whole numbers, not a copy. @throws {RangeError} when it is no such column */
export function integersOf(table: ColumnTable, name: string): Int32Array {
  const found = column(table, name);
  if (found instanceof Int32Array) return found;
  throw new RangeError(`integersOf: ${name} is not a column of whole numbers`);
}

/** The array behind a column of states: 0 kept, 1 queried, 2 set aside. @throws {RangeError} when it is no such column */
export function statesOf(table: ColumnTable, name = 'state'): Uint8Array {
  const found = column(table, name);
  if (found instanceof Uint8Array) return found;
  throw new RangeError(`statesOf: ${name} is not a column of states`);
}

/**
 * A column of numbers without those that rules set aside: where a column `<name>.state` stands beside it, what it marks
 * with 2 is missing.
 *
 * @throws {RangeError} when it is no column of numbers
 */
export function fitNumbersOf(table: ColumnTable, name: string): Float64Array {
  const values = numbersOf(table, name);
  if (!hasColumn(table, `${name}.state`)) return values;
  const states = statesOf(table, `${name}.state`);
  return values.map((value, row) => ((states[row] as number) < 2 ? value : Number.NaN));
}

/** The named values behind a column. @throws {RangeError} when it is no such column */
export function categoriesOf(table: ColumnTable, name: string): CategoryColumn {
  const found = column(table, name);
  if (typeof found === 'object' && found !== null && 'names' in found && 'codes' in found)
    return found as CategoryColumn;
  throw new RangeError(`categoriesOf: ${name} is not a column of named values`);
}
