import { firstRow, type Sheet } from './sheet.js';
import type { Slip } from './slips.js';

function refuse(slip: Slip, found: string): never {
  const { rule, file, row, column, value } = slip;
  throw new RangeError(`plant: slip ${rule} ("${value}") cannot stand in ${file}, row ${row}, ${column}: ${found}`);
}

function columnOf(sheet: Sheet, slip: Slip): number {
  const index = sheet.header.indexOf(slip.column);
  if (index < 0) refuse(slip, 'there is no such column');
  return index;
}

/** Adds the rows that should not be there; later slips count from the rows already added. */
function addRow(rows: string[][], index: number, slip: Slip): void {
  if (slip.how.kind === 'stray') rows.splice(index, 0, [...slip.how.cells]);
  if (slip.how.kind !== 'repeated') return;
  const above = rows[index - 1];
  if (!above) refuse(slip, 'there is no row above to repeat');
  rows.splice(index, 0, [...above]);
}

/** Writes the value of one slip over the one that should stand there. */
function writeCell(row: string[] | undefined, column: number, slip: Slip): void {
  const found = row?.[column];
  if (!row || found === undefined) refuse(slip, 'there is no such row');
  const { how, rule, value } = slip;
  if (how.kind === 'mistyped' && found !== how.should) refuse(slip, `"${found}" stands there, not "${how.should}"`);
  if (how.kind === 'mistyped' && found === value) refuse(slip, 'it would change nothing');
  const same = found === value;
  if (how.kind === 'repeated' && same === (rule === 'same-key-differs'))
    refuse(slip, `"${found}" stands in the row above`);
  if ((how.kind === 'unexamined' || how.kind === 'stray') && !same) refuse(slip, `"${found}" stands there`);
  row[column] = value;
}

/**
 * The sheet with its slips.
 *
 * @throws {RangeError} when a slip's row, column or proper value is not there
 */
export function plant(sheet: Sheet, slips: readonly Slip[]): Sheet {
  const mine = slips.filter((slip) => slip.file === sheet.file).sort((a, b) => a.row - b.row);
  const rows = sheet.rows.map((row) => [...row]);
  for (const slip of mine) addRow(rows, slip.row - firstRow(sheet), slip);
  for (const slip of mine) writeCell(rows[slip.row - firstRow(sheet)], columnOf(sheet, slip), slip);
  return { ...sheet, rows };
}

/** Rows of a sheet whose slip says that this eye stands in no other file. */
export function unexaminedRows(sheet: Sheet, slips: readonly Slip[]): (readonly string[])[] {
  const mine = slips.filter((slip) => slip.file === sheet.file && slip.how.kind === 'unexamined');
  return mine.map((slip) => sheet.rows[slip.row - firstRow(sheet)] ?? refuse(slip, 'there is no such row'));
}
