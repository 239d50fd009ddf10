import { html, type Markup, markup } from './html.js';

/**
 * A drawing as it stands in the page: named for screen readers, and as wide as the style sheet makes it from the
 * width it has in print (1 px of the drawing is 1 pt).
 *
 * @param svg    one svg element, as drawn; its ids are its own already
 * @param label  attributes that name it
 * @throws {RangeError} when the text is no svg element with a width
 */
export function drawingMarkup(svg: string, label: Markup): Markup {
  const [, attributes, rest] = /<svg\b([^>]*)>([\s\S]*)$/.exec(svg) ?? [];
  const width = /\bwidth="([\d.]+)"/.exec(attributes ?? '')?.[1];
  if (attributes === undefined || rest === undefined || width === undefined) {
    throw new RangeError(`drawingMarkup: ${svg.slice(0, 40)}; expected an svg element with a width`);
  }
  const kept = attributes.replace(/\s(?:width|height|role|class|aria-[a-z]+)="[^"]*"/g, '');
  return html`${markup(`<svg${kept} style="--w:${width}"`)} ${label}>${markup(rest.trim())}`;
}
