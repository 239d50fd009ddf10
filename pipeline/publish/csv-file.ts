import { csvLine } from '../../src/format/csv.js';
import { shortest } from '../../src/format/number.js';
import { round } from '../../src/format/round.js';
import type { Plan } from '../../src/records/plan.js';
import type { OutputFile } from './replace.js';

export type Spreadsheet = Plan['outputs']['spreadsheet'];

/** Lines joined before they become bytes: a text of all rows of a registry would be longer than texts may be. */
const linesAtOnce = 10_000;

/**
 * A CSV that people open: delimiter and decimal mark of their spreadsheet, and a byte-order mark in front, without
 * which spreadsheets misread every sign beyond ASCII.
 *
 * @param rows  cells as text; numbers by `numberCell`
 * @param tell  told now and then how many rows are set
 */
export function spreadsheetFile(
  path: string,
  header: readonly string[],
  rows: Iterable<readonly string[]>,
  spreadsheet: Spreadsheet,
  tell: (rows: number) => void = () => {},
): OutputFile {
  const delimiter = spreadsheet === 'comma' ? ';' : ',';
  const pieces = [Buffer.from('\ufeff')];
  let lines = [csvLine(header, delimiter)];
  let set = 0;
  for (const row of rows) {
    lines.push(csvLine(row, delimiter));
    if (lines.length < linesAtOnce) continue;
    set += lines.length;
    tell(set);
    pieces.push(Buffer.from(lines.join('')));
    lines = [];
  }
  return { path, bytes: Buffer.concat([...pieces, Buffer.from(lines.join(''))]) };
}

/** A number at the millionth, with the spreadsheet's decimal mark; empty for NaN. */
export function numberCell(value: number, spreadsheet: Spreadsheet): string {
  if (Number.isNaN(value)) return '';
  const text = shortest(round(value, 6));
  return spreadsheet === 'comma' ? text.replace('.', ',') : text;
}
