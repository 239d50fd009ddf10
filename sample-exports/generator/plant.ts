import { firstRow, type Sheet } from './sheet.js';
import type { FurtherCell, Slip } from './slip.js';

function refuse(slip: Slip, found: string): never {
  const { rule, file, row, column, value } = slip;
  throw new RangeError(`plant: slip ${rule} ("${value}") cannot stand in ${file}, row ${row}, ${column}: ${found}`);
}

function columnOf(sheet: Sheet, slip: Slip, column = slip.column): number {
  const index = sheet.header.indexOf(column);
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
  if (how.kind === 'repeated' && same !== (rule === 'same-key-equal'))
    refuse(slip, `"${found}" stands in the row above`);
  if ((how.kind === 'unexamined' || how.kind === 'stray') && !same) refuse(slip, `"${found}" stands there`);
  row[column] = value;
}

/** The cells that were mistyped with it. */
function writeFurther(row: string[] | undefined, sheet: Sheet, slip: Slip): void {
  const further: readonly FurtherCell[] = slip.how.kind === 'mistyped' ? (slip.how.also ?? []) : [];
  for (const { column, value, should } of further) {
    const index = columnOf(sheet, slip, column);
    if (!row || row[index] !== should) refuse(slip, `"${row?.[index]}" stands in ${column}, not "${should}"`);
    row[index] = value;
  }
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
  for (const slip of mine) {
    const row = rows[slip.row - firstRow(sheet)];
    writeCell(row, columnOf(sheet, slip), slip);
    writeFurther(row, sheet, slip);
  }
  return { ...sheet, rows };
}

/** Rows of a sheet whose slip says that this eye stands in no other file. */
export function unexaminedRows(sheet: Sheet, slips: readonly Slip[]): (readonly string[])[] {
  const mine = slips.filter((slip) => slip.file === sheet.file && slip.how.kind === 'unexamined');
  return mine.map((slip) => sheet.rows[slip.row - firstRow(sheet)] ?? refuse(slip, 'there is no such row'));
}
