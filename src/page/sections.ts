import { count as countText } from '../format/number.js';
import type { Words } from '../words/index.js';
import type { FindingGroup, PageContent, Section } from './content.js';
import { figureMarkup, tableMarkup } from './exhibits.js';
import { html, type Markup, prose } from './html.js';
import { markdownMarkup } from './markdown.js';

/** One question: its answer, then the figures and tables behind the answer. */
export function sectionMarkup(section: Section, internal: boolean, words: Words): Markup {
  const { id, question, answer, figures, tables, findings } = section;
  return html`<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title">${question}</h2>
${answer.map((sentence) => html`<p class="answer">${prose(sentence)}</p>\n`)}${figures.map((figure) => figureMarkup(figure, internal, words))}${tables.map((table) => tableMarkup(table, words))}${findings && findingsMarkup(findings, words)}</section>
`;
}

/** Doubts by rule: how many, and in the clinic also where. */
function findingsMarkup(findings: readonly FindingGroup[], words: Words): Markup {
  const groups = (['set aside', 'query', 'note'] as const)
    .map((severity) => ({ severity, rules: findings.filter((finding) => finding.severity === severity) }))
    .filter(({ rules }) => rules.length > 0);
  return html`${groups.map(
    ({ severity, rules }) => html`<h3>${words.page.severities[severity]}</h3>
<ul class="rules">
${rules.map(ruleMarkup)}</ul>
`,
  )}`;
}

/** How many, and what; where it is told, the first places open below. */
function ruleMarkup({ sentence, count, places }: FindingGroup): Markup {
  const line = html`<b class="count">${countText(count)}</b> <span>${sentence}</span>`;
  if (places.length === 0) return html`<li><div class="rule">${line}</div></li>\n`;
  return html`<li><details><summary class="rule">${line}</summary>
<ul>${places.map((place) => html`<li>${place}</li>`)}</ul>
</details></li>
`;
}

/** Eyes that the page lists; a registry's page would be longer than anybody reads. */
const mostReviewed = 500;

/** Eyes to look at again, with the reason: only on the page that stays in the clinic. */
export function reviewMarkup(content: PageContent, words: Words): Markup | undefined {
  if (!content.internal) return undefined;
  const { review, files } = content.internal;
  const text = words.page.review;
  const rows = review
    .slice(0, mostReviewed)
    .map(
      ({ patient, laterality, year, reasons }) =>
        html`<tr><th scope="row">${patient}</th><td>${laterality}</td><td>${year}</td><td>${reasons.join('; ')}</td></tr>\n`,
    );
  const table = html`<div class="wide" role="region" tabindex="0" aria-label="${text.caption}"><table class="review">
<caption>${text.caption}</caption>
<thead><tr>${text.head.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows}</tbody>
</table></div>
`;
  const more =
    review.length > mostReviewed
      ? html`<p>${text.more(countText(mostReviewed))}</p>
`
      : undefined;
  return html`<section id="review" aria-labelledby="review-title">
<h2 id="review-title">${text.title}</h2>
<p class="answer">${text.answer(review.length)}</p>
${review.length > 0 ? table : undefined}${more}<h3>${text.files}</h3>
<ul>${files.map(({ file, holds }) => html`<li><a href="${file}">${file}</a> ${holds}</li>`)}</ul>
</section>
`;
}

/** How the numbers were made, and what the report is not. */
export function closingMarkup(content: PageContent, words: Words): Markup {
  return html`<section id="methods" aria-labelledby="methods-title">
<h2 id="methods-title">${words.page.methods}</h2>
${markdownMarkup(content.methods)}</section>
`;
}
