import { round } from '../format/round.js';
import type { Strip } from './content.js';
import { html, type Markup } from './html.js';

/**
 * An estimate and its interval as a mark on a line, so that a wide interval looks wide. It repeats what the number
 * beside it says and is passed over by screen readers.
 */
export function stripMarkup(strip: Strip): Markup {
  const at = (value: number): string => place(strip, value);
  const { low, high, value, marks } = strip;
  const band =
    low === undefined || high === undefined
      ? undefined
      : html`<rect class="band" x="${at(low)}" y="3" width="${width(strip, low, high)}" height="8"/>`;
  const ticks = marks.map((mark) => html`<line class="mark" x1="${at(mark.at)}" x2="${at(mark.at)}" y1="4" y2="10"/>`);
  const labels = marks.map((mark) => html`<span>${mark.label}</span>`);
  return html`<div class="strip" aria-hidden="true">
<svg viewBox="0 0 100 14" preserveAspectRatio="none"><line class="axis" x1="0" x2="100" y1="7" y2="7"/>${ticks}${band}<line class="value" x1="${at(value)}" x2="${at(value)}" y1="0" y2="14"/></svg>
<div class="marks">${labels}</div>
</div>`;
}

/** Percent of the line, to a hundredth; what lies beyond an end stands at the end. */
function place({ from, to }: Strip, value: number): string {
  const share = (Math.min(Math.max(value, from), to) - from) / (to - from);
  return String(round(100 * share, 2));
}

function width(strip: Strip, low: number, high: number): string {
  return String(round(Number(place(strip, high)) - Number(place(strip, low)), 2));
}
