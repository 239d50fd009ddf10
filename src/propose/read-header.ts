import type { AcuityNumbers } from '../intake/acuity.js';
import { fieldNamed } from '../plan/fields.js';
import { type Context, sideIn, visitIn } from './context.js';
import { headerWords, wordsOf } from './header-words.js';
import { type Match, matchesOf, phrasesOf } from './phrases.js';
import { vocabularies } from './vocabulary/index.js';
import type { Term } from './vocabulary/vocabulary.js';

/** Everything that a header says. */
export interface HeaderReading {
  matches: readonly Match[];
  context: Context;
  /** How cylinders are written, where the header says so: '+cyl', 'minus cyl'. */
  sign: 'plus' | 'minus' | undefined;
  /** What bare acuity numbers count, where the header says so. */
  scale: AcuityNumbers | undefined;
}

const nowhere: Context = { visit: undefined, side: undefined };

interface Hints {
  words: readonly string[];
  sign: 'plus' | 'minus' | undefined;
  scale: AcuityNumbers | undefined;
}

const scaleWords = (['decimal', 'logmar', 'letters'] as const).map(
  (scale) => [scale, vocabularies.flatMap(({ scales }) => phrasesOf(scales[scale]))] as const,
);
const signWords = (['plus', 'minus'] as const).map(
  (sign) => [sign, vocabularies.flatMap(({ notations }) => phrasesOf(notations[sign]).flat())] as const,
);

/** 'pluszylinder' is 'zylinder' written with plus. */
function signOf(word: string): { sign: 'plus' | 'minus'; rest: string } | undefined {
  for (const [sign, words] of signWords) {
    const start = words.find((one) => word.startsWith(one));
    if (start !== undefined) return { sign, rest: word.slice(start.length) };
  }
  return undefined;
}

/** Takes out what says how the cells are written; a header that says nothing else keeps its words. */
function hintsIn(words: readonly string[]): Hints {
  const found: Hints = { words, sign: undefined, scale: undefined };
  for (const [scale, phrases] of scaleWords) {
    const phrase = phrases.find((one) => one.every((word) => found.words.includes(word)));
    if (!phrase || found.words.length <= phrase.length) continue;
    found.scale ??= scale;
    found.words = found.words.filter((word) => !phrase.includes(word));
  }
  const signs = found.words.map(signOf);
  const rest = found.words.map((word, i) => signs[i]?.rest ?? word).filter((word) => word !== '');
  if (rest.length === 0) return found;
  return { ...found, words: rest, sign: signs.find((one) => one !== undefined)?.sign };
}

interface Attempt {
  words: readonly string[];
  context: Context;
}

/** Prefixes and suffixes that are glued to a name in small letters. */
const glued = /^(pre|post|preop|postop|prae|pra)(?=[a-z0-9]{2})|(?<=[a-z0-9]{2})(preop|postop|pre|post)$/;

/** The words as they stand, then without what says when, which eye, and both. */
function attempts(words: readonly string[], language: string | undefined): readonly Attempt[] {
  const visit = visitIn(words, language);
  const side = sideIn(words);
  const both = visit && sideIn(visit.rest);
  const found: Attempt[] = [{ words, context: nowhere }];
  if (visit) found.push({ words: visit.rest, context: { visit: visit.value, side: undefined } });
  if (both && visit) found.push({ words: both.rest, context: { visit: visit.value, side: both.value } });
  if (side) found.push({ words: side.rest, context: { visit: undefined, side: side.value } });
  return found;
}

function ungluedAttempts(words: readonly string[], language: string | undefined): readonly Attempt[] {
  const apart = words.flatMap((word) => word.replace(glued, ' $1$2 ').trim().split(' '));
  return apart.length > words.length ? attempts(apart, language).slice(1) : [];
}

interface Reading extends Attempt {
  matches: readonly Match[];
}

const strengthOf = ({ matches }: Reading): number => matches[0]?.strength ?? 0;

function best(tried: readonly Attempt[]): Reading | undefined {
  const readings = tried.map((one): Reading => ({ ...one, matches: matchesOf(one.words) }));
  const found = readings.filter(({ matches }) => matches.length > 0);
  return found.toSorted((a, b) => strengthOf(b) - strengthOf(a))[0];
}

/** A time belongs to what is measured at a visit, not to what is known of the operation. */
const isTimed = (term: Term): boolean => fieldNamed(term)?.holds.includes('exam') ?? true;

/**
 * What a header says, in any of the languages.
 *
 * @param header    as written
 * @param group     the cell of a row of groups above it; '' none
 * @param language  of the file's other headers, where it is known
 * @example readHeader('m3_sph (D)', '', undefined).context.visit?.name // '3 months'
 */
export function readHeader(header: string, group: string, language: string | undefined): HeaderReading {
  const { words, sign: signed } = headerWords(header);
  const above = wordsOf(group);
  const hints = hintsIn(words);
  const alone = best([...attempts(hints.words, language), ...ungluedAttempts(hints.words, language)]);
  const found = alone ?? best(attempts([...above, ...hints.words], language));
  const ofGroup: Context = { visit: visitIn(above, language)?.value, side: sideIn(above)?.value };
  const context = { visit: found?.context.visit ?? ofGroup.visit, side: found?.context.side ?? ofGroup.side };
  const matches = found?.matches ?? [];
  const timed = matches.some(({ term }) => isTimed(term));
  return {
    matches,
    context: timed ? context : { ...context, visit: undefined },
    sign: hints.sign ?? signed,
    scale: hints.scale,
  };
}
