import type { ColumnTable } from 'arquero';
import { integersOf, numbersOf } from '../columns/table.js';
import { type Kind, kinds } from '../records/canonical.js';
import { millionths } from '../units.js';

/**
 * Row of a table for each row of a file's block; −1 where the table holds none, because the row gave nothing of its
 * kind or was joined with another.
 *
 * @param table   a measurement table
 * @param source  index of the raw table
 * @param block   index into that source's blocks
 * @param rows    rows of the raw table
 */
export function rowsOfBlock(table: ColumnTable, source: number, block: number, rows: number): Int32Array {
  const found = new Int32Array(rows).fill(-1);
  const sources = integersOf(table, 'source');
  const blocks = integersOf(table, 'block');
  const row = integersOf(table, 'row');
  for (let i = 0; i < row.length; i++) {
    if (sources[i] === source && blocks[i] === block) found[row[i] as number] = i;
  }
  return found;
}

/** First row of an eye in a table that is sorted by eye; the number of rows, or another eye's row, where it has none. */
export function firstRowOf(eyes: Int32Array, eye: number): number {
  let low = 0;
  let high = eyes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((eyes[middle] as number) < eye) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Finds the measurement of an eye that took a value over from a row joined with another: such a row has no place of
 * its own. A sphere may stand there in the other notation.
 *
 * @returns row of the table, −1 where no measurement of the eye holds the value
 */
export function joinedRow(table: ColumnTable, kind: Kind): (eye: number, value: number) => number {
  const eyes = integersOf(table, 'eye');
  const own = kinds[kind].map((name) => numbersOf(table, name));
  const transposed = (row: number): number => (own[0]?.[row] as number) + (own[1]?.[row] as number);
  return (eye, value) => {
    const [size, wanted] = [millionths(Math.abs(value)), millionths(value)];
    for (let row = firstRowOf(eyes, eye); row < eyes.length && eyes[row] === eye; row++) {
      const held = own.map((column) => millionths(column[row] as number));
      if (held.includes(wanted) || held.includes(size)) return row;
      if (kind === 'refractions' && millionths(transposed(row)) === wanted) return row;
    }
    return -1;
  };
}
