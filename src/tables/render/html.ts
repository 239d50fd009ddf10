import { escaped } from '../../format/markup.js';
import { count } from '../../format/number.js';
import type { TableRow, TypesetTable } from '../../records/report.js';
import type { Words } from '../../words/index.js';

/**
 * A table as an HTML fragment that a screen reader can walk: caption, column heads, row heads, blocks as row groups,
 * footnotes in the foot. Classes: `block` for the label of a block, `inner` for rows below one, `words` for cells that
 * hold a clause.
 *
 * @example tableHtml(table, words) // '<table id="table-eye-flow">…'
 */
export function tableHtml(table: TypesetTable, words: Words): string {
  const heads = table.head.map(({ text, n }) => {
    const size = n === undefined ? '' : ` <span class="n">(n = ${count(n)})</span>`;
    return `<th scope="col">${escaped(text)}${size}</th>`;
  });
  const width = table.head.length;
  return [
    `<table id="table-${table.id}">`,
    `<caption>${escaped(words.tables.caption(table.number, table.title))}</caption>`,
    `<thead><tr>${heads.join('')}</tr></thead>`,
    ...rowGroups(table.rows).map((rows) => `<tbody>\n${rows.map((row) => rowHtml(row, width)).join('\n')}\n</tbody>`),
    '<tfoot>',
    ...table.footnotes.map((note) => `<tr><td colspan="${width}">${escaped(note)}</td></tr>`),
    '</tfoot>',
    '</table>',
    '',
  ].join('\n');
}

/** Rows in groups: a row without indent that stands above indented ones opens a group. */
function rowGroups(rows: readonly TableRow[]): readonly (readonly TableRow[])[] {
  const groups: TableRow[][] = [];
  for (const row of rows) {
    const opens = row.indent === 0 || groups.length === 0;
    if (opens) groups.push([row]);
    else groups.at(-1)?.push(row);
  }
  return groups;
}

function rowHtml({ label, indent, cells }: TableRow, width: number): string {
  if (cells.length === 0) {
    return `<tr class="block"><th scope="rowgroup" colspan="${width}">${escaped(label)}</th></tr>`;
  }
  const inner = indent === 1 ? ' class="inner"' : '';
  return `<tr${inner}><th scope="row">${escaped(label)}</th>${cells.map(({ text }) => cellHtml(text)).join('')}</tr>`;
}

/** Numbers stay on one line; a cell of words, such as a verdict, may be broken. */
function cellHtml(text: string): string {
  const isWords = text.length > 20 && !/\d/.test(text);
  return `<td${isWords ? ' class="words"' : ''}>${escaped(text)}</td>`;
}
