import type { Cited } from '../words/en/methods-text.js';
import type { ReferenceKey } from '../words/en/references.js';
import type { Words } from '../words/index.js';

/**
 * Paragraphs with the numbers of the works they cite, numbered in the order in which they are met.
 *
 * @returns one text a paragraph, and the keys in the order of their numbers
 */
export function cited(paragraphs: readonly (readonly Cited[])[]): {
  told: readonly string[];
  keys: readonly ReferenceKey[];
} {
  const keys = [...new Set(paragraphs.flat().flatMap(({ cites }) => cites ?? []))];
  const sentence = ({ text, cites }: Cited): string => {
    const numbers = (cites ?? []).map((key) => keys.indexOf(key) + 1);
    return numbers.length === 0 ? `${text}.` : `${text} [${numbers.join(', ')}].`;
  };
  return { told: paragraphs.map((paragraph) => paragraph.map(sentence).join(' ')), keys };
}

/** The works by key, those whose details were not read again marked so. */
export function referenceList(keys: readonly ReferenceKey[], text: Words['tables']['methods']): readonly string[] {
  return keys.map((key) => {
    const work: { text: string; memory?: true } = text.references[key];
    return work.memory ? `${work.text} (${text.fromMemory}).` : `${work.text}.`;
  });
}
