import type { TypesetTable } from '../records/report.js';
import { tableHtml } from '../tables/render/html.js';
import type { Words } from '../words/index.js';
import type { DrawnFigure } from './content.js';
import { escaped, html, type Markup, markup } from './html.js';
import { scopedSvg } from './scoped-svg.js';

/**
 * A figure with its number, title and legend below it.
 *
 * @param points  whether the marks of the drawing bear values that a reader may walk through
 */
export function figureMarkup({ figure, svg }: DrawnFigure, points: boolean, words: Words): Markup {
  const { id, number, title, legend, alt } = figure;
  const walked = points && svg.includes('aria-label');
  const drawing = markup(scopedSvg(svg, id, walked ? 'role="group"' : `role="img" aria-label="${escaped(alt)}"`));
  const paper = walked
    ? html`<div class="paper" tabindex="0" role="group" aria-label="${alt} ${words.page.walk}" data-walk>${drawing}</div>`
    : html`<div class="paper" tabindex="0" role="group" aria-label="${words.page.figure(number)}">${drawing}</div>`;
  return html`<figure id="figure-${id}">
${paper}
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
