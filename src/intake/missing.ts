import { plainSigns } from './signs.js';

/** Ways to write "no value"; letter case and outer blanks do not matter. */
const builtIn = ['', '-', '--', '.', '?', 'n/a', 'na', 'nr', 'n/r', 'unknown', '#n/a', 'null'];

/**
 * A test for cells that say there is no value.
 *
 * @param declared  words that audit.yaml adds to the built-in ones
 * @returns whether a cell, as written, is missing
 * @source words in common practice, no source; they are those the specification of audit.yaml lists
 * @example missingWords(['n.e.'])(' N.E. ') // true
 */
export function missingWords(declared: readonly string[] = []): (cell: string) => boolean {
  const words = new Set([...builtIn, ...declared].map(folded));
  return (cell) => words.has(folded(cell));
}

function folded(cell: string): string {
  return plainSigns(cell)
    .replace(/\u2014/g, '-')
    .toLowerCase();
}
