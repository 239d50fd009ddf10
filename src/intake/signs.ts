/** What exports put round a cell so that a spreadsheet takes it for text: ="012", '012. */
const wrapped = /^(?:=?"([^"]*)"|['’`](?=[\p{L}\d+\-\u2212\u2013.,]))/u;

/** Characters without which a cell is neither wrapped nor holds a mark that does not show. */
const telltale = /["'’`\u200b\ufeff]/;

/**
 * Text as people type it, with the look-alikes of minus, blanks and times made one: a true minus or an en dash before
 * a digit is '-', a non-breaking blank is a blank, '×' is 'x'. Outer blanks are dropped, inner ones are single; so is
 * what makes a spreadsheet take a number for text.
 *
 * @example plainSigns(' −0,50\u00a0D') // '-0,50 D'
 */
export function plainSigns(text: string): string {
  return unwrapped(text)
    .replace(/[\u2212\u2010\u2011\u2013\ufe63\uff0d]/g, '-')
    .replace(/[×✕]/g, 'x')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * A code as it stands in the file, leading zeros, signs and all: without outer blanks, marks that do not show, and what
 * makes a spreadsheet take a number for text.
 *
 * @example unwrapped('="0012"') // '0012'
 */
export function unwrapped(text: string): string {
  const plain = text.trim();
  // Nearly every cell is plain; the gate looks at every one.
  if (!telltale.test(plain)) return plain;
  return plain
    .replace(/[\u200b\ufeff]/g, '')
    .trim()
    .replace(wrapped, '$1')
    .trim();
}
