/**
 * A drawing that can stand beside others in one page: every id, and every reference to one, is given a name of its
 * own; otherwise one figure would take the clipping of another. The outer element tells what the figure shows.
 *
 * @param svg     one svg element, as drawn
 * @param scope   name of the figure, a–z and hyphens
 * @param label   attributes that name the drawing for a screen reader, as markup
 * @example scopedSvg('<svg><g id="a"/><use href="#a"/></svg>', 'flow', 'role="img"')
 */
export function scopedSvg(svg: string, scope: string, label: string): string {
  const own = (id: string): string => `${scope}-${id}`;
  return svg
    .replace(/^[\s\S]*?<svg/, '<svg')
    .replace(/\bid="([^"]+)"/g, (_, id: string) => `id="${own(id)}"`)
    .replace(
      /\burl\((&quot;|["']?)#([^)"'&]+)\1\)/g,
      (_, quote: string, id: string) => `url(${quote}#${own(id)}${quote})`,
    )
    .replace(/\b((?:xlink:)?href)="#([^"]+)"/g, (_, name: string, id: string) => `${name}="#${own(id)}"`)
    .replace(/<svg\b([^>]*)>/, (_, attributes: string) => `<svg${withoutRole(attributes)} ${label}>`)
    .trim();
}

function withoutRole(attributes: string): string {
  return attributes.replace(/\s(?:role|aria-[a-z]+)="[^"]*"/g, '');
}
