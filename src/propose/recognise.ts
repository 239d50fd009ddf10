import { type Field, fieldNamed } from '../plan/fields.js';
import type { Context } from './context.js';
import type { ExportedFile } from './exported.js';
import { columnOf } from './exported.js';
import { fillByCells } from './fill-by-cells.js';
import { guessOf } from './guesses.js';
import { likeEnough, likeness } from './looks.js';
import { isBareAxis, pairAxes } from './pair-axes.js';
import { speaksByPart } from './phrases.js';
import type { Left, LeftReason, Placed, RecognisedFile } from './placed.js';
import { type Profile, profileOf } from './profile.js';
import { type HeaderReading, readHeader } from './read-header.js';
import { otherTerms, type Term } from './vocabulary/vocabulary.js';

interface Candidate extends Placed {
  score: number;
}

const isOnly = (term: Term, holds: Field['holds'][number]): boolean => {
  const field = fieldNamed(term);
  return field !== undefined && field.holds.length === 1 && field.holds[0] === holds;
};

/** The language that most of the file's headers are of. */
function languageOf(headers: readonly HeaderReading[]): string | undefined {
  const votes = new Map<string, number>();
  for (const { matches } of headers) {
    const languages = new Set(
      matches.filter(({ strength, language }) => strength === 3 && language !== '').map(({ language }) => language),
    );
    if (languages.size === 1) for (const one of languages) votes.set(one, (votes.get(one) ?? 0) + 1);
  }
  return [...votes].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** Whether columns speak of operations: a word such as "date" or "axis" then means that of the operation. */
function speaksOfSurgery(headers: readonly HeaderReading[]): boolean {
  const sure = headers.filter(
    ({ matches }) =>
      matches.length > 0 && matches.every(({ term, strength }) => strength > 1 && isOnly(term, 'surgery')),
  );
  return sure.length > 0;
}

/** How well a header and cells speak for a term; what the file is about decides between terms of the same word. */
function scored(
  match: HeaderReading['matches'][number],
  like: number,
  context: Context,
  surgical: boolean,
  language: string | undefined,
): number {
  const ofExam = isOnly(match.term, 'exam');
  const fits = context.visit || !surgical ? ofExam : !ofExam;
  return (
    10 * match.strength -
    0.3 * Math.min(match.rank, 12) +
    (like >= likeEnough.surely ? 5 : 0) +
    (fits ? 6 : 0) +
    (match.language === language ? 1 : 0)
  );
}

/** Whom and which eye a row is of holds for all of it. */
const ofWholeRow: Context = { visit: undefined, side: undefined };

function candidatesOf(
  index: number,
  header: HeaderReading,
  profile: Profile,
  file: ExportedFile,
  surgical: boolean,
  language: string | undefined,
): readonly Candidate[] {
  return header.matches.filter(speaksByPart).map((match) => {
    const like = likeness(match.term, profile, file.decimal);
    const score = scored(match, like, header.context, surgical, language);
    const by = match.strength === 1 ? 'part of header' : 'header';
    const context = match.term === 'patient' || match.term === 'eye' ? ofWholeRow : header.context;
    return { index, term: match.term, context, by, likeness: like, against: undefined, score };
  });
}

/** Columns that give the same thing of the same visit and eye; predictions of several formulas stand side by side. */
const keyOf = ({ term, context, index }: Placed): string => {
  const visit = isOnly(term, 'exam') ? (context.visit?.name ?? '') : '';
  return `${term}|${visit}|${context.side ?? ''}${term === 'predicted_se' ? `|${index}` : ''}`;
};

/** The best candidate of each column, each meaning once. */
function settle(candidates: readonly Candidate[]): Map<number, Placed> {
  const settled = new Map<number, Placed>();
  const taken = new Set<string>();
  const inOrder = candidates.toSorted((a, b) => b.score - a.score || b.likeness - a.likeness || a.index - b.index);
  for (const { score: _, ...one } of inOrder) {
    if (settled.has(one.index) || taken.has(keyOf(one))) continue;
    settled.set(one.index, one);
    taken.add(keyOf(one));
  }
  return settled;
}

function reasonFor(index: number, header: HeaderReading, profile: Profile, file: ExportedFile): Left {
  const [best] = header.matches.filter(speaksByPart);
  const known = header.matches.filter(({ term }) => likeness(term, profile, file.decimal) >= likeEnough.least);
  if (isBareAxis(header)) return { index, why: known.length > 0 ? 'which axis' : 'unlike', term: 'axis' };
  if (best && known.length === 0) return { index, why: 'unlike', term: best.term };
  if (best) return { index, why: 'second', term: known[0]?.term };
  if (guessOf(profile, file.decimal) === 'acuity') return { index, why: 'which acuity', term: 'acuity' };
  const isText = profile.words.length > 20 && profile.share(({ value }) => Number.isNaN(value)) > 0.8;
  return { index, why: isText ? 'free text' : 'unknown', term: undefined };
}

const otherReasons: Readonly<Record<keyof typeof otherTerms, LeftReason | undefined>> = {
  k_flat_axis: undefined,
  acuity: 'which acuity',
  remarks: 'free text',
  row_number: 'not needed',
};

/**
 * What the columns of a file are: by their headers, by their neighbours, by their cells. Cells that contradict a header
 * win over it, and that is kept as a doubt.
 */
export function recognise(file: ExportedFile): RecognisedFile {
  const indices = file.header.map((_, index) => index);
  const profiles = indices.map((index) => profileOf(columnOf(file, index), file.decimal, file.isMissing));
  const read = (language: string | undefined): readonly HeaderReading[] =>
    indices.map((index) => readHeader(file.header[index] ?? '', file.groups[index] ?? '', language));
  const language = languageOf(read(undefined));
  const headers = withSides(read(language));
  const surgical = speaksOfSurgery(headers);
  const candidates = indices.flatMap((index) =>
    candidatesOf(index, headers[index] as HeaderReading, profiles[index] as Profile, file, surgical, language),
  );
  const fitting = candidates.filter((one) => one.likeness >= likeEnough.least);
  const settled = settle(fitting.filter(({ index }) => !isBareAxis(headers[index] as HeaderReading)));
  const bare = indices.filter(
    (index) => isBareAxis(headers[index] as HeaderReading) && fitting.some((one) => one.index === index),
  );
  for (const one of pairAxes(settled, bare, headers)) settled.set(one.index, one);
  const open = indices.filter((index) => !settled.has(index));
  fillByCells(settled, open, { file, profiles, headers }, surgical);
  const all = [...settled.values()].sort((a, b) => a.index - b.index);
  const placed = all.filter(({ term }) => reasonOfTerm(term) === undefined);
  const left = indices.flatMap((index): readonly Left[] => {
    const one = settled.get(index);
    const why = one && reasonOfTerm(one.term);
    if (why) return [{ index, why, term: one.term }];
    return one ? [] : [reasonFor(index, headers[index] as HeaderReading, profiles[index] as Profile, file)];
  });
  return { file, profiles, headers, placed, left, language };
}

function reasonOfTerm(term: Term): LeftReason | undefined {
  return Object.hasOwn(otherTerms, term) ? otherReasons[term as keyof typeof otherTerms] : undefined;
}

/** A side in a header counts only where both stand in the file: "la" and "le" are words of their own, too. */
function withSides(headers: readonly HeaderReading[]): readonly HeaderReading[] {
  const sides = new Set(headers.map(({ context }) => context.side));
  const isMapped = headers.some(({ matches }) =>
    matches.some(({ term, strength }) => term === 'eye' && strength === 3),
  );
  if (sides.has('right') && sides.has('left') && !isMapped) return headers;
  return headers.map((header) => ({ ...header, context: { ...header.context, side: undefined } }));
}
