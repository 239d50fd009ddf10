import { fieldNamed, fields } from '../plan/fields.js';
import { formulas } from './formulas.js';
import { foldedText, wordsOf } from './header-words.js';
import { vocabularies } from './vocabulary/index.js';
import type { Term } from './vocabulary/vocabulary.js';

/** A term that a header may mean. */
export interface Match {
  term: Term;
  /** 3 the whole header, 2 the same words in another order or beside words that say nothing, 1 a part of it. */
  strength: 1 | 2 | 3;
  /** Place in the list of words for the term: 0 is the surest. */
  rank: number;
  language: string;
  /** Words of the header that are not part of it. */
  leftover: readonly string[];
}

interface Entry {
  term: Term;
  rank: number;
  language: string;
}

/** The parts of a text between commas. */
export function listed(text: string): readonly string[] {
  return text.split(/,\s+/).map((part) => part.trim());
}

/** How a word with an umlaut is written where there is none on the keyboard. */
function spelledOut(phrase: string): string {
  return phrase.toLowerCase().replace(/ä/g, 'ae').replace(/ö/g, 'oe').replace(/ü/g, 'ue');
}

/** The word lists of one text, each also with its umlauts spelled out. */
export function phrasesOf(text: string): readonly (readonly string[])[] {
  return listed(text).flatMap((phrase) => {
    const other = spelledOut(phrase);
    return foldedText(other) === foldedText(phrase) ? [wordsOf(phrase)] : [wordsOf(phrase), wordsOf(other)];
  });
}

const joined = (words: readonly string[]): string => words.join('');
const sorted = (words: readonly string[]): string => [...words].sort().join(' ');

function gather(keyOf: (words: readonly string[]) => string): ReadonlyMap<string, readonly Entry[]> {
  const index = new Map<string, Entry[]>();
  const add = (words: readonly string[], entry: Entry): void => {
    const known = index.get(keyOf(words)) ?? [];
    if (!known.some(({ term }) => term === entry.term)) known.push(entry);
    index.set(keyOf(words), known);
  };
  for (const { name } of fields) add(wordsOf(name), { term: name, rank: 0, language: '' });
  // A column headed by a formula alone is what that formula predicts.
  for (const { names } of formulas) {
    for (const name of names) add(wordsOf(name), { term: 'predicted_se', rank: 5, language: '' });
  }
  for (const { language, headers } of vocabularies) {
    for (const [term, text] of Object.entries(headers)) {
      phrasesOf(text).forEach((words, rank) => {
        add(words, { term, rank, language });
      });
    }
  }
  return index;
}

const byJoined = gather(joined);
const bySorted = gather(sorted);
const fillers = new Set(vocabularies.flatMap((one) => phrasesOf(one.fillers).flat()));

const known = (words: readonly string[], strength: Match['strength'], leftover: readonly string[]): readonly Match[] =>
  (byJoined.get(joined(words)) ?? []).map((entry) => ({ ...entry, strength, leftover }));

const reordered = (words: readonly string[], leftover: readonly string[]): readonly Match[] =>
  (bySorted.get(sorted(words)) ?? []).map((entry) => ({ ...entry, strength: 2, leftover }));

/** Abbreviations of one or two letters mean something only where they stand alone. */
const mayBePart = (words: readonly string[]): boolean => joined(words).length > 2 || /\d/.test(joined(words));

/** The longest run of words that means something, with what is left over; of equally long ones the first. */
function partly(words: readonly string[]): readonly Match[] {
  for (let length = words.length - 1; length > 0; length--) {
    for (let at = 0; at + length <= words.length; at++) {
      const part = words.slice(at, at + length);
      const leftover = [...words.slice(0, at), ...words.slice(at + length)];
      const found = mayBePart(part) ? known(part, 1, leftover) : [];
      if (found.length > 0) return found;
    }
  }
  return [];
}

/**
 * What the words of a header may mean, in every language; several terms where the trade uses one word for several things.
 *
 * @param words  of the header, without what says when or which eye
 * @example matchesOf(['op', 'date']).map(({ term }) => term) // ['surgery_date']
 */
export function matchesOf(words: readonly string[]): readonly Match[] {
  if (words.length === 0) return [];
  const whole = known(words, 3, []);
  if (whole.length > 0) return whole;
  const turned = reordered(words, []);
  if (turned.length > 0) return turned;
  const plain = words.filter((word) => !fillers.has(word));
  const bare = plain.length > 0 && plain.length < words.length ? plain : undefined;
  const filled = bare ? [...known(bare, 2, []), ...reordered(bare, [])] : [];
  return filled.length > 0 ? filled : partly(bare ?? words);
}

/** Cells of a measurement speak for a term of which the header says a part; names, codes and dates do not. */
export function speaksByPart({ term, strength, leftover }: Match): boolean {
  const type = fieldNamed(term)?.type;
  const speaks = type === undefined || ['number', 'acuity', 'refraction', 'clock-or-degrees'].includes(type);
  return strength > 1 || speaks || leftover.every((word) => /^\d+$/.test(word));
}
