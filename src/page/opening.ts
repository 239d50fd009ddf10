import type { Words } from '../words/index.js';
import type { BigNumber, PageContent } from './content.js';
import { html, type Markup, prose } from './html.js';
import { stripMarkup } from './strip.js';

/** What the report is about, before anything else. */
export function headerMarkup(content: PageContent, words: Words): Markup {
  const kicker = content.internal ? words.page.kickerInternal : words.page.kicker;
  const period = content.period === '' ? undefined : html`<br>${content.period}`;
  return html`<header>
<p class="kicker">${kicker}</p>
<h1>${content.title}</h1>
<p class="cohort">${content.cohort}${period}</p>
</header>
`;
}

/** The six numbers, three sentences, and what changes how to read them. */
export function openingMarkup(content: PageContent, words: Words): Markup {
  return html`<section id="in-short" aria-labelledby="in-short-title">
<h2 id="in-short-title">${words.page.inShort}</h2>
<dl class="numbers">
${content.numbers.map(numberMarkup)}</dl>
<div class="lead">${content.sentences.map((sentence) => html`<p>${prose(sentence)}</p>`)}</div>
${careMarkup(content.warnings, words)}</section>
`;
}

function numberMarkup({ label, value, details, strip }: BigNumber): Markup {
  return html`<div class="number"><dt>${label}</dt>
<dd class="figure-of">${value}</dd>
<dd class="measure">${details.map((detail) => html`<div>${prose(detail)}</div>`)}</dd>
<dd>${strip && stripMarkup(strip)}</dd></div>
`;
}

function careMarkup(warnings: readonly string[], words: Words): Markup | undefined {
  if (warnings.length === 0) return undefined;
  return html`<aside class="care" aria-labelledby="care-title">
<h3 id="care-title">${words.page.care}</h3>
<ul>${warnings.map((warning) => html`<li>${prose(warning)}</li>`)}</ul>
</aside>
`;
}
