import { fileNameIdentifier } from '../intake/identifiers.js';
import { wordsOf } from '../propose/header-words.js';
import type { KnownPersons } from './known-persons.js';
import { isTradeWord } from './trade-words.js';

/** The name of a copy, and whether the file's own name had to be given up. */
export interface CopyName {
  name: string;
  renamed: boolean;
}

/** The last part of a path, without its ending. */
function stemOf(path: string): string {
  return path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1).replace(/\.[A-Za-z]{2,4}$/, '');
}

/** A word that begins with a capital and is none of the trade may be a name: Smith_lane. */
function holdsStrangeName(stem: string): boolean {
  const names = stem.match(/(?<!\p{L})\p{Lu}\p{Ll}{2,}/gu) ?? [];
  return names.some((name) => !wordsOf(name).every(isTradeWord));
}

/**
 * Names of the copies: the files' own, unless one looks like a person's or holds a name or number of somebody in the
 * files; such a file is called by its place, `file-2.csv`. No two are alike.
 *
 * @param paths  of the files, in the order in which they were given
 * @example copyNames(['exports/lane.csv', 'Surname, First.csv'], knownPersons([])) // lane.csv, file-2.csv
 */
export function copyNames(paths: readonly string[], persons: KnownPersons): readonly CopyName[] {
  const taken = new Set<string>();
  return paths.map((path, at) => {
    const stem = stemOf(path);
    const renamed =
      stem === '' || fileNameIdentifier(path) !== undefined || holdsStrangeName(stem) || persons.isNamedIn(stem);
    const wanted = renamed ? `file-${at + 1}` : stem;
    let name = wanted;
    for (let next = 2; taken.has(name.toLowerCase()); next++) name = `${wanted}-${next}`;
    taken.add(name.toLowerCase());
    return { name: `${name}.csv`, renamed };
  });
}
