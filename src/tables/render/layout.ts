import { count } from '../../format/number.js';
import type { TypesetTable } from '../../records/report.js';
import type { Words } from '../../words/index.js';

/** How a table is laid on a page: the same in every form that sets pages. */
export interface TableLayout {
  /** Part of the text width of each column; together 1. */
  shares: readonly number[];
  /** Whether the table wants a page on its side. */
  isWide: boolean;
}

/** Characters of 9 pt serif type on the 170 mm of an upright A4 page less its margins, at 0.42 em each. */
const lineLength = 130;
/** Labels and heads are broken beyond these; cells with numbers are not. */
const widest = { label: 40, cell: 26, head: 16 };
const narrowest = 7;

/** Column widths from the longest texts: numbers stay on one line, labels, heads and cells of words are broken. */
export function tableLayout({ head, rows }: TypesetTable): TableLayout {
  const wanted = head.map(({ text }, column) => {
    const cells = rows.filter(({ cells }) => cells.length > 0);
    if (column === 0) return least(widest.label, [text, ...cells.map(({ label }) => label)]);
    const body = least(
      widest.cell,
      cells.map(({ cells }) => cells[column - 1]?.text ?? ''),
    );
    return Math.max(body, least(widest.head, [text]));
  });
  const all = wanted.reduce((sum, width) => sum + width, 0);
  return { shares: wanted.map((width) => width / all), isWide: all > lineLength };
}

function least(limit: number, texts: readonly string[]): number {
  const longest = Math.max(...texts.map(({ length }) => length));
  return Math.min(limit, Math.max(narrowest, longest)) + 2;
}

/** Heads of the columns with their number of eyes, in one text. */
export function headTexts({ head }: TypesetTable, words: Words): readonly string[] {
  return head.map(({ text, n }) => (n === undefined ? text : words.tables.headCount(text, count(n))));
}
