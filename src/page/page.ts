import type { Words } from '../words/index.js';
import type { PageContent } from './content.js';
import { html, type Markup, markup } from './html.js';
import { headerMarkup, openingMarkup } from './opening.js';
import { walkScript } from './script.js';
import { closingMarkup, reviewMarkup, sectionMarkup } from './sections.js';
import { internalStyle, style } from './style.js';

/**
 * The report as one file that needs nothing else: styles, drawings and, for the clinic, a short script stand in
 * it; without the script all of it can still be read.
 */
export function page(content: PageContent, words: Words): string {
  const internal = content.internal !== undefined;
  const policy = `default-src 'none'; style-src 'unsafe-inline'${internal ? "; script-src 'unsafe-inline'" : ''}`;
  return html`<!doctype html>
<html lang="${content.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${content.title}${internal ? ` (${words.page.internalMark})` : ''}</title>
<style>${markup(style)}${internal ? markup(internalStyle) : undefined}</style>
</head>
<body>
<a class="skip" href="#in-short">${words.page.skip}</a>
<div class="page">
${headerMarkup(content, words)}${contentsMarkup(content, words)}<main>
${openingMarkup(content, words)}${content.sections.map((section) => sectionMarkup(section, internal, words))}${reviewMarkup(content, words)}${closingMarkup(content, words)}</main>
<footer>
${content.cautions.map((caution) => html`<p>${caution}</p>\n`)}</footer>
</div>
${internal ? markup(`<div class="tip" role="status"></div>\n<script>${walkScript}</script>\n`) : undefined}</body>
</html>
`.markup;
}

function contentsMarkup({ sections, internal }: PageContent, { page: words }: Words): Markup {
  const entries = [
    { id: 'in-short', text: words.inShort },
    ...sections.map(({ id, question }) => ({ id, text: question })),
    ...(internal ? [{ id: 'review', text: words.review.title }] : []),
    { id: 'methods', text: words.methods },
  ];
  return html`<nav aria-label="${words.contents}">
<ol>${entries.map(({ id, text }) => html`<li><a href="#${id}">${text}</a></li>`)}</ol>
</nav>
`;
}
