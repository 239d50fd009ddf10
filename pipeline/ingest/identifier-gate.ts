import { identifierKinds } from '../../src/findings/detail-kinds.js';
import { headerIdentifier } from '../../src/intake/identifier-header.js';
import { valueIdentifier } from '../../src/intake/identifiers.js';

/** Distinct cells of one column that are held at a time. */
export const mostWords = 4096;

/**
 * Looks at the cells of a column that is not kept, as they pass. At any time it holds the latest few thousand distinct
 * ones, so that a column of free text costs no memory, and a share is never judged from a handful.
 */
export interface PassingWords {
  push(cell: string): void;
  /** Index into `identifierKinds` of the first rule that the cells broke, or −1. */
  verdict(): number;
}

/** Index into `identifierKinds` of the rule that these words break, or −1. */
export function valueKind(words: readonly string[], field: string | undefined): number {
  const broken = valueIdentifier({ words, field });
  return broken === undefined ? -1 : identifierKinds.indexOf(broken);
}

/** Index into `identifierKinds` of the rule that a header breaks, or −1. */
export function headerKind(header: string): number {
  const broken = headerIdentifier(header);
  return broken === undefined ? -1 : identifierKinds.indexOf(broken);
}

/** Starts to look at a column that audit.yaml does not map. */
export function passingWords(): PassingWords {
  const words = new Set<string>();
  let kind = -1;
  let last = '';

  const judge = (): void => {
    if (kind < 0) kind = valueKind([...words], undefined);
  };

  return {
    push(cell) {
      if (cell === last || kind >= 0) return;
      last = cell;
      words.add(cell);
      if (words.size < mostWords) return;
      judge();
      for (const word of [...words].slice(0, mostWords / 2)) words.delete(word);
    },
    verdict() {
      judge();
      return kind;
    },
  };
}
