import { html, type Markup } from './html.js';

/**
 * The little Markdown that our own texts use: headings, paragraphs, numbered lists, signs escaped by a backslash. The
 * first heading is left out, since the page has its own.
 *
 * @example markdownMarkup('# Methods\n\nEyes \\< 5.\n') // <p>Eyes &lt; 5.</p>
 */
export function markdownMarkup(text: string): Markup {
  const blocks = text.split(/\n{2,}/).map((block) => block.trim());
  return html`${blocks.filter((block) => block !== '' && !block.startsWith('# ')).map(blockMarkup)}`;
}

function blockMarkup(block: string): Markup {
  if (block.startsWith('## ')) return html`<h3>${plain(block.slice(3))}</h3>\n`;
  if (!/^\d+\. /.test(block)) return html`<p>${plain(block)}</p>\n`;
  const items = block.split('\n').map((line) => html`<li>${plain(line.replace(/^\d+\. /, ''))}</li>\n`);
  return html`<ol class="works">
${items}</ol>
`;
}

function plain(text: string): string {
  return text.replace(/\\(.)/g, '$1');
}
