import type { ColumnTable } from 'arquero';
import { integersOf } from '../columns/table.js';

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
