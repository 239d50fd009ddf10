/** Delimiters of the CSVs we write: a comma, or a semicolon where the comma is the decimal mark. */
type CsvDelimiter = ',' | ';';

/**
 * One line of a CSV file, its line break included. Cells with a delimiter, a quotation mark, a line break or outer
 * blanks are quoted, quotation marks doubled.
 *
 * Cells that a spreadsheet would carry out as a formula get an apostrophe in front: all that begin with `=`, `@`, a tab
 * or a carriage return, and those with `+` or `-` that are not a number, an interval, or a number with either in
 * brackets ("-2 -3" would be shown as -5).
 *
 * @param cells      text
 * @param delimiter  comma or semicolon
 * @source quoting by RFC 4180, with the line feed alone as line break
 * @example csvLine(['Mean, D', '-0.06', '=1+1'], ',') // '"Mean, D",-0.06,\'=1+1\n'
 */
export function csvLine(cells: readonly string[], delimiter: CsvDelimiter): string {
  return `${cells.map((cell) => quoted(disarmed(cell), delimiter)).join(delimiter)}\n`;
}

const number = String.raw`[+-]?\d[\d.,]*(?:e[+-]\d+)?`;
const range = `${number}(?: to ${number})?`;
/** '-0.06', '-0.06 (-0.10 to -0.01)', with the marks of footnotes behind them. */
const signedNumber = new RegExp(`^${range}(?: \\(${range}\\))?[*†‡§‖¶#]*$`);

function disarmed(cell: string): string {
  const formula = /^[=+@\t\r-]/.test(cell) && cell !== '-' && !signedNumber.test(cell);
  return formula ? `'${cell}` : cell;
}

function quoted(cell: string, delimiter: CsvDelimiter): string {
  const plain = !cell.includes(delimiter) && !/["\r\n]|^\s|\s$/.test(cell);
  return plain ? cell : `"${cell.replaceAll('"', '""')}"`;
}
