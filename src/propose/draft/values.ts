import { parseCodes } from '../../intake/codes.js';
import { propose as words } from '../../words/en/propose.js';
import type { ArrangedFile } from '../arrange.js';
import { wordsOf } from '../header-words.js';
import { phrasesOf } from '../phrases.js';
import { vocabularies } from '../vocabulary/index.js';
import type { Vocabulary } from '../vocabulary/vocabulary.js';
import { doubt } from './doubt.js';
import { type YamlLine, yamlList, yamlText } from './lines.js';

/** Fields whose words are listed, so that a word of next year stands out. */
const listedFields = ['technique', 'lens_model'] as const;

/** Most words that are listed; a field of more is a field of codes. */
const mostWords = 30;

/** A word of so few rows beside so many others is asked about rather than listed. */
const isRare = (cells: number, all: number): boolean => all >= 100 && cells <= 0.01 * all && cells < 3;

/** Words of a field over all files, with the rows that have them, most frequent first. */
function wordsOfField(
  files: readonly ArrangedFile[],
  field: string,
): readonly (readonly [word: string, cells: number])[] {
  const counts = new Map<string, number>();
  for (const { of, blocks } of files) {
    for (const { index } of blocks.flatMap(({ columns }) => columns.filter(({ term }) => term === field))) {
      for (const { word, cells } of of.profiles[index]?.words ?? [])
        counts.set(word.trim(), (counts.get(word.trim()) ?? 0) + cells);
    }
  }
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
}

function meaningsOf(pick: (one: Vocabulary) => Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const pairs = vocabularies.flatMap((one) =>
    Object.entries(pick(one)).flatMap(([ours, text]) =>
      phrasesOf(text).map((phrase) => [phrase.join(' '), ours] as const),
    ),
  );
  return new Map(pairs.toReversed());
}

const techniques = meaningsOf(({ techniques: lists }) => lists);
const complications = meaningsOf(({ complications: lists }) => lists);

const meaningOf = (word: string, known: ReadonlyMap<string, string>): string | undefined =>
  known.get(wordsOf(word).join(' '));

/** Our value for each spelling: that of the trade, where all frequent ones are known; else the spelling itself. */
function grouped(field: string, list: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const meanings = list.map((word) => (field === 'technique' ? meaningOf(word, techniques) : undefined));
  const isKnown = meanings.every((meaning) => meaning !== undefined) && new Set(meanings).size > 1;
  const groups = new Map<string, string[]>();
  list.forEach((word, at) => {
    const ours = isKnown ? (meanings[at] as string) : (folded(word, groups) ?? word);
    groups.set(ours, [...(groups.get(ours) ?? []), word]);
  });
  return groups;
}

/** A group whose name differs in letter case alone: both are one word to a reader, and audit.yaml takes it once. */
function folded(word: string, groups: ReadonlyMap<string, readonly string[]>): string | undefined {
  return [...groups.keys()].find((name) => name.toLowerCase() === word.toLowerCase());
}

/** The spellings of a group that audit.yaml lists: those that letter case alone tells apart once. */
function spellings(list: readonly string[]): readonly string[] {
  return list.filter((word, at) => list.findIndex((other) => other.toLowerCase() === word.toLowerCase()) === at);
}

function fieldLines(files: readonly ArrangedFile[], field: string): readonly YamlLine[] {
  const all = wordsOfField(files, field);
  const total = all.reduce((sum, [, cells]) => sum + cells, 0);
  if (all.length === 0 || all.length > mostWords) return [];
  const rare = all.filter(([, cells]) => isRare(cells, total));
  const list = all.filter(([, cells]) => !isRare(cells, total)).map(([word]) => word);
  const doubts =
    rare.length > 0
      ? [doubt('rare words', words.doubts.rareWords(rare.map(([word, cells]) => words.wordInRows(word, cells))))]
      : [];
  const groups = [...grouped(field, list)].map(
    ([ours, spelled]): YamlLine => ({ depth: 2, text: `${yamlText(ours)}: ${yamlList(spellings(spelled))}` }),
  );
  return [{ depth: 1, text: `${field}:`, doubts }, ...groups];
}

/** The words of techniques and lenses, each under our value for it. */
export function valueLines(files: readonly ArrangedFile[]): readonly YamlLine[] {
  const lines = listedFields.flatMap((field) => fieldLines(files, field));
  return lines.length === 0 ? [] : [{ depth: 0, text: 'values:', notes: [words.sections.values] }, ...lines];
}

/** Named complications and the codes that count as them; codes that are not known count as "other". */
export function complicationLines(files: readonly ArrangedFile[]): readonly YamlLine[] {
  const codes = [...new Set(wordsOfField(files, 'complication').flatMap(([word]) => parseCodes(word)))];
  if (codes.length === 0) return [];
  const named = new Map<string, string[]>();
  for (const code of codes) {
    const ours = meaningOf(code, complications);
    if (ours !== undefined) named.set(ours, [...(named.get(ours) ?? []), code]);
  }
  const others = codes.filter((code) => meaningOf(code, complications) === undefined);
  const doubts = others.length > 0 ? [doubt('codes', words.doubts.otherCodes(others))] : [];
  const lines = [...named].map(
    ([ours, list]): YamlLine => ({ depth: 1, text: `${ours}: ${yamlList(spellings(list))}` }),
  );
  return [
    { depth: 0, text: 'complications:', off: lines.length === 0, notes: [words.sections.complications], doubts },
    ...lines,
  ];
}
