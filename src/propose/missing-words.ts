import { wordsOf } from './header-words.js';
import { phrasesOf } from './phrases.js';
import { vocabularies } from './vocabulary/index.js';

const known = new Set(vocabularies.flatMap(({ missing }) => phrasesOf(missing).map((words) => words.join(''))));

/** Whether a word between measurements says that there is none, in a way that audit.yaml must declare. */
export function saysMissing(word: string): boolean {
  return known.has(wordsOf(word).join(''));
}
