import type { Laterality } from '../intake/laterality.js';
import { foldedText } from './header-words.js';
import { listed } from './phrases.js';
import { vocabularies } from './vocabulary/index.js';

/** A cell as it is compared. */
const folded = (word: string): string =>
  foldedText(word)
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

const codesFor = (side: Laterality): ReadonlySet<string> =>
  new Set(vocabularies.flatMap(({ eyeCodes }) => listed(eyeCodes[side])).map(folded));

const right = codesFor('right');
const left = codesFor('left');

/** The eye that a code of a column means where it stands beside one for the other eye: D beside S, or beside G. */
export function eyeCode(word: string): Laterality | undefined {
  const plain = folded(word);
  if (right.has(plain)) return 'right';
  // Derecho and izquierdo; 'i' alone says nothing elsewhere.
  return left.has(plain) || plain === 'i' ? 'left' : undefined;
}
