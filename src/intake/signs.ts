/**
 * Text as people type it, with the look-alikes of minus, blanks and times made one: a true minus or an en dash before
 * a digit is '-', a non-breaking blank is a blank, '×' is 'x'. Outer blanks are dropped, inner ones are single.
 *
 * @example plainSigns(' −0,50\u00a0D') // '-0,50 D'
 */
export function plainSigns(text: string): string {
  return text
    .replace(/[\u2212\u2010\u2011\u2013\ufe63\uff0d]/g, '-')
    .replace(/[×✕]/g, 'x')
    .replace(/[\u200b\ufeff]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}
