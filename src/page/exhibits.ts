import type { TypesetTable } from '../records/report.js';
import { tableHtml } from '../tables/render/html.js';
import type { Words } from '../words/index.js';
import type { DrawnFigure } from './content.js';
import { drawingMarkup } from './drawing.js';
import { html, type Markup, markup } from './html.js';

/**
 * A figure with its number, title and legend below it.
 *
 * @param points  whether the marks of the drawing bear values that a reader may walk through
 */
export function figureMarkup({ figure, svg }: DrawnFigure, points: boolean, words: Words): Markup {
  const { id, number, title, legend, alt } = figure;
  const walked = points && svg.includes('aria-label');
  const drawing = drawingMarkup(svg, walked ? html`role="group"` : html`role="img" aria-label="${alt}"`);
  const label = walked ? `${alt} ${words.page.walk}` : words.page.figure(number);
  return html`<figure id="figure-${id}">
<div class="paper" tabindex="0" role="group" aria-label="${label}"${walked ? html` data-walk` : undefined}>${drawing}</div>
<figcaption><b>${words.page.figure(number)}. ${title}.</b> ${legend}</figcaption>
</figure>
`;
}

/** A table in a region of its own, so that a narrow screen scrolls the table and never the page. */
export function tableMarkup(table: TypesetTable, words: Words): Markup {
  const name = words.page.table(table.number);
  return html`<div class="wide" role="region" tabindex="0" aria-label="${name}">
${markup(tableHtml(table, words))}</div>
`;
}
