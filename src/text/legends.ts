import type { Figure, TypesetTable } from '../records/report.js';
import { markdownText } from '../tables/render/markdown.js';
import type { Words } from '../words/index.js';

/**
 * legends.md: titles and footnotes of all tables, titles and legends of all figures, as a journal asks for them apart
 * from tables and artwork.
 */
export function legends(tables: readonly TypesetTable[], figures: readonly Figure[], words: Words): string {
  const { caption, figureCaption, text } = words.tables;
  const blocks = [
    `# ${text.legendsHeading}`,
    ...(tables.length > 0 ? [`## ${text.tablesHeading}`] : []),
    ...tables.flatMap(({ number, title, footnotes }) => [
      `**${caption(number, title)}**`,
      ...footnotes.map(markdownText),
    ]),
    ...(figures.length > 0 ? [`## ${text.figuresHeading}`] : []),
    ...figures.flatMap(({ number, title, legend }) => [`**${figureCaption(number, title)}**`, markdownText(legend)]),
  ];
  return `${blocks.join('\n\n')}\n`;
}
