import { fieldNamed } from '../../plan/fields.js';
import { propose as words } from '../../words/en/propose.js';
import type { Placed, RecognisedFile } from '../placed.js';
import type { Profile, ProfileWord } from '../profile.js';
import { yearCounts } from '../years.js';

/** Different words that a comment shows. */
const mostShown = 5;
const longestShown = 18;

const shown = (word: string): string => {
  const single = word.replace(/\s+/g, ' ').trim();
  return single.length > longestShown ? `${single.slice(0, longestShown - 1)}…` : single;
};

const byFrequency = ({ words: all }: Profile): readonly ProfileWord[] => all.toSorted((a, b) => b.cells - a.cells);

/** The most frequent words of a column. */
export function frequentWords(profile: Profile): string {
  const all = byFrequency(profile);
  const first = all.slice(0, mostShown).map(({ word }) => shown(word));
  return words.samples.words(first, all.length);
}

/** The smallest and the largest number of a column, as they are written. */
export function rangeOf(profile: Profile): string {
  const numbers = profile.words.filter(({ value }) => !Number.isNaN(value)).toSorted((a, b) => a.value - b.value);
  const [low, high] = [numbers[0], numbers.at(-1)];
  return low && high ? words.samples.range(shown(low.word), shown(high.word)) : frequentWords(profile);
}

/** Ages of 90 and more are one class, here too. */
function ages(profile: Profile): string {
  const numbers = profile.words.map(({ value }) => value).filter((value) => !Number.isNaN(value));
  const [low, high] = [Math.min(...numbers), Math.max(...numbers)];
  return words.samples.range(low >= 90 ? '90+' : String(low), high >= 90 ? '90+' : String(high));
}

/**
 * What the cells of a column look like, for a comment: never a patient's code, never a date.
 */
export function samplesOf(of: RecognisedFile, { index, term }: Pick<Placed, 'index' | 'term'>): string {
  const profile = of.profiles[index];
  if (!profile || profile.filled === 0) return words.samples.empty;
  if (term === 'patient') return words.samples.codes(profile.words.length);
  const type = fieldNamed(term)?.type;
  if (type === 'date') return words.samples.years([...yearCounts(of.file, profile).keys()].sort((a, b) => a - b));
  if (term === 'age' && profile.share(({ value }) => Number.isNaN(value)) < 1) return ages(profile);
  const isNumber = type === 'number' || type === 'clock-or-degrees';
  return isNumber ? rangeOf(profile) : frequentWords(profile);
}
