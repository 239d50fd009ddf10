import { count } from '../../format/number.js';
import type { TypesetTable } from '../../records/report.js';
import type { Words } from '../../words/index.js';

/**
 * A table as Markdown: title, a pipe table, then its footnotes. Labels of blocks are bold, rows below them stand one
 * em space in.
 *
 * @example tableMarkdown(table, words)
 */
export function tableMarkdown(table: TypesetTable, words: Words): string {
  const heads = table.head.map(({ text, n }) => (n === undefined ? text : words.tables.headCount(text, count(n))));
  const body = table.rows.map(({ label, indent, cells }) => {
    const shown = markdownText(label);
    const stub = cells.length === 0 ? `**${shown}**` : indent === 1 ? `\u2003${shown}` : shown;
    return [stub, ...table.head.slice(1).map((_, i) => markdownText(cells[i]?.text ?? ''))];
  });
  return [
    `**${markdownText(words.tables.caption(table.number, table.title))}**`,
    '',
    pipes(heads.map(markdownText)),
    pipes(heads.map((_, i) => (i === 0 ? '---' : '---:'))),
    ...body.map(pipes),
    '',
    ...table.footnotes.flatMap((note) => [markdownText(note), '']),
  ].join('\n');
}

function pipes(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

/** Text whose signs Markdown does not read as its own. */
export function markdownText(text: string): string {
  return text.replace(/[\\|*_`<[\]#]/g, (sign) => `\\${sign}`);
}
