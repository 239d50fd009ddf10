import type { Figure, TypesetTable } from '../records/report.js';
import { markdownText } from '../tables/render/markdown.js';
import type { Words } from '../words/index.js';

/**
 * checklist.md: which items of the guideline for observational studies this report answers, and which the authors must
 * still write. Tables and figures are named by their numbers; those that this audit has not are not named.
 */
export function checklist(tables: readonly TypesetTable[], figures: readonly Figure[], words: Words): string {
  const { heading, about, head, items, none } = words.checklist;
  const { table: tableName, figure: figureName, reportPage } = words.page;
  const numbered = (id: string): readonly string[] => [
    ...tables.filter((table) => table.id === id).map(({ number }) => tableName(number)),
    ...figures
      .filter((figure) => figure.id === id || figure.panels?.figures.some((panel) => panel.id === id))
      .map(({ number }) => figureName(number)),
  ];
  const rows = items.map(({ item, asks, texts, exhibits, author }) => {
    const found = [...texts.map((name) => (name === 'page' ? reportPage : name)), ...exhibits.flatMap(numbered)];
    const answered = found.length === 0 ? none : [...new Set(found)].join(', ');
    return line([item, asks, answered, author === '' ? none : author]);
  });
  return [`# ${heading}`, '', about, '', line(head), line(head.map(() => '---')), ...rows, ''].join('\n');
}

function line(cells: readonly string[]): string {
  return `| ${cells.map(markdownText).join(' | ')} |`;
}
