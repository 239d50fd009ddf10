import { csvLine } from '../../format/csv.js';
import type { TypesetTable } from '../../records/report.js';
import type { Words } from '../../words/index.js';

/**
 * A table as a file that a spreadsheet opens: title, head, rows, footnotes, every line of the same width. ASCII hyphen
 * for minus, no mark between thousands; with `comma` the decimal mark is a comma and the delimiter a semicolon. Labels
 * and footnotes keep their words; numbers are converted in cells only, where no code can stand.
 *
 * @example tableCsv(table, 'point', words)
 */
export function tableCsv(table: TypesetTable, spreadsheet: 'point' | 'comma', words: Words): string {
  const delimiter = spreadsheet === 'comma' ? ';' : ',';
  const width = table.head.length;
  const line = (cells: readonly string[]) =>
    csvLine([...cells, ...Array<string>(width - cells.length).fill('')].map(hyphened), delimiter);
  const heads = table.head.map(({ text, n }) => (n === undefined ? text : words.tables.headCount(text, String(n))));
  return [
    line([words.tables.caption(table.number, table.title)]),
    line(heads),
    ...table.rows.map(({ label, indent, cells }) =>
      line([indent === 1 ? `  ${label}` : label, ...cells.map(({ text }) => fileNumbers(text, spreadsheet))]),
    ),
    ...table.footnotes.map((note) => line([note])),
  ].join('');
}

function hyphened(text: string): string {
  return text.replaceAll('\u2212', '-');
}

/** Numbers of a cell as files have them: thousands unmarked, then the decimal mark. */
function fileNumbers(text: string, spreadsheet: 'point' | 'comma'): string {
  const ungrouped = text.replace(/(?<=\d),(?=\d{3}(?!\d))/g, '');
  return spreadsheet === 'comma' ? ungrouped.replace(/(?<=\d)\.(?=\d)/g, ',') : ungrouped;
}
