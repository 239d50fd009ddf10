import { escaped } from '../format/markup.js';

/** Text that is markup already and is not escaped again. */
export interface Markup {
  readonly markup: string;
}

type Piece = string | number | Markup | readonly Markup[] | undefined;

/** Text that is known to be markup: a drawn figure, a style sheet. */
export function markup(text: string): Markup {
  return { markup: text };
}

/**
 * Markup from a template; every value that is text is escaped, so that a header or a code of an export can never
 * become markup.
 *
 * @example html`<p>${'a < b'}</p>`.markup // '<p>a &lt; b</p>'
 */
export function html(parts: TemplateStringsArray, ...values: readonly Piece[]): Markup {
  return { markup: parts.map((part, at) => part + pieceText(values[at])).join('') };
}

function pieceText(piece: Piece): string {
  if (piece === undefined) return '';
  if (typeof piece === 'string') return escaped(piece);
  if (typeof piece === 'number') return String(piece);
  return 'markup' in piece ? piece.markup : piece.map((each) => each.markup).join('');
}

/** Running text whose numbers keep their unit on one line: '63.3 %' never breaks behind the number. */
export function prose(text: string): string {
  return text.replace(/(\d) (?=%|°|D\b)/g, '$1\u00a0');
}
