import type { Laterality } from '../intake/laterality.js';
import type { Days } from '../units.js';
import { phrasesOf } from './phrases.js';
import { vocabularies } from './vocabulary/index.js';
import type { Vocabulary } from './vocabulary/vocabulary.js';

/** When something was measured, as a header or a label says it. */
export interface VisitContext {
  /** `before`, `outcome` where only "after surgery" is said, or a time such as `1 month`. */
  name: string;
  /** Days from surgery that the name stands for; undefined for before and after. */
  days: Days | undefined;
}

/** What a header says beside the quantity itself. */
export interface Context {
  visit: VisitContext | undefined;
  side: Laterality | undefined;
}

const unitDays = { day: 1, week: 7, month: 30, year: 365 } as const;
type TimeUnit = keyof typeof unitDays;

const before: VisitContext = { name: 'before', days: undefined };
const after: VisitContext = { name: 'outcome', days: undefined };

/** "3 months" is said alike whatever the export calls it. */
export function timeContext(amount: number, unit: TimeUnit): VisitContext {
  return { name: `${amount} ${unit}${amount === 1 ? '' : 's'}`, days: amount * unitDays[unit] };
}

/** Unit of time by its word, the words of one language first: 'j' is a day in French and a year in German. */
function timeUnits(first: string | undefined): ReadonlyMap<string, TimeUnit> {
  const ordered = [...vocabularies].sort((a, b) => Number(b.language === first) - Number(a.language === first));
  const found = new Map<string, TimeUnit>();
  for (const { visits } of ordered) {
    for (const [unit, text] of Object.entries(visits.units)) {
      for (const [word = ''] of phrasesOf(text)) if (!found.has(word)) found.set(word, unit as TimeUnit);
    }
  }
  return found;
}

const unitsByLanguage = new Map(
  [undefined, ...vocabularies.map(({ language }) => language)].map((one) => [one, timeUnits(one)]),
);

const phrasesFor = (pick: (one: Vocabulary) => string): readonly (readonly string[])[] =>
  vocabularies.flatMap((one) => phrasesOf(pick(one))).sort((a, b) => b.length - a.length);

const beforePhrases = phrasesFor((one) => one.visits.before);
const afterPhrases = phrasesFor((one) => one.visits.after);
const sidePhrases = {
  right: phrasesFor((one) => one.sides.right),
  left: phrasesFor((one) => one.sides.left),
};

/** Where a run of words stands in others; −1 where it does not. */
function positionOf(phrase: readonly string[], words: readonly string[]): number {
  return words.findIndex((_, at) => phrase.every((word, i) => words[at + i] === word));
}

interface Found<T> {
  value: T;
  rest: readonly string[];
}

function without<T>(words: readonly string[], at: number, length: number, value: T): Found<T> {
  return { value, rest: [...words.slice(0, at), ...words.slice(at + length)] };
}

function phraseIn<T>(
  words: readonly string[],
  phrases: readonly (readonly string[])[],
  value: T,
): Found<T> | undefined {
  for (const phrase of phrases) {
    const at = positionOf(phrase, words);
    if (at >= 0) return without(words, at, phrase.length, value);
  }
  return undefined;
}

/** Words before a number that make it part of a name: K 1, Axis 2. */
const numbered = new Set([
  'k',
  'r',
  'a',
  'ax',
  'axis',
  'achse',
  'axe',
  'pred',
  'radius',
  'rayon',
  'meridian',
  'no',
  'nr',
]);

/** "1 month", "month 1", "1m", "m1": the first that stands in the words. */
function timeIn(words: readonly string[], units: ReadonlyMap<string, TimeUnit>): Found<VisitContext> | undefined {
  for (let at = 0; at < words.length; at++) {
    const [word = '', next = ''] = [words[at], words[at + 1]];
    const [, amount, glued] = /^(\d{1,3})([a-z]+)$/.exec(word) ?? [];
    // A1 and R1 are meridians, S1 is a surgeon.
    const [, leading, behind] = /^(?![aks]\d)([a-z]+)(\d{1,3})$/.exec(word) ?? [];
    const isName = numbered.has(words[at - 1] ?? '');
    const after = (unit: string | undefined, n: string | undefined, length: number) => {
      const known = unit === undefined ? undefined : units.get(unit);
      return known && n !== undefined ? without(words, at, length, timeContext(Number(n), known)) : undefined;
    };
    const found =
      after(glued, amount, 1) ??
      after(leading, behind, 1) ??
      (/^\d{1,3}$/.test(word) && (!isName || next.length > 2) ? after(next, word, 2) : undefined) ??
      (/^\d{1,3}$/.test(next) && word.length > 1 ? after(word, next, 2) : undefined);
    if (found) return found;
  }
  return undefined;
}

/**
 * Takes out of a header what says when: before or after surgery, and how long after.
 *
 * @param language  of the file's other headers, where it is known
 * @returns the visit, and the words that are left; undefined where nothing says when
 * @example visitIn(['m1', 'sph'], undefined)?.value.name // '1 month'
 */
export function visitIn(words: readonly string[], language: string | undefined): Found<VisitContext> | undefined {
  const time = timeIn(words, unitsByLanguage.get(language) ?? new Map());
  const left = time?.rest ?? words;
  const early = phraseIn(left, beforePhrases, before);
  if (early) return time ? { ...early, value: before } : early;
  const late = phraseIn(left, afterPhrases, after);
  if (!time) return late;
  return late ? { ...late, value: time.value } : time;
}

/** Takes out of a header what says which eye; undefined where nothing does. */
export function sideIn(words: readonly string[]): Found<Laterality> | undefined {
  return phraseIn(words, sidePhrases.right, 'right' as const) ?? phraseIn(words, sidePhrases.left, 'left' as const);
}
