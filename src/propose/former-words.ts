import { locateColumn } from '../findings/header.js';
import { parseCodes } from '../intake/codes.js';
import { fieldNamed } from '../plan/fields.js';
import type { Plan } from '../records/plan.js';
import { propose as words } from '../words/en/propose.js';
import { type Doubt, doubt } from './draft/doubt.js';
import type { CarriedFile } from './former.js';

const folded = (word: string): string => word.trim().toLowerCase();

/** Words that the files of now write in the columns of a field. */
function wordsNow(field: string, files: readonly CarriedFile[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { of, source } of files) {
    for (const column of source.blocks.flatMap((block) => [...block.columns, ...block.covariates])) {
      const { index } = locateColumn(of.file.header, column);
      if (column.field !== field || index === undefined) continue;
      const isCodes = fieldNamed(field)?.type === 'codes';
      const all = (of.profiles[index]?.words ?? []).flatMap(({ word }) => (isCodes ? parseCodes(word) : [word.trim()]));
      for (const word of all) found.set(folded(word), word);
    }
  }
  return found;
}

/** Words of now that no list of the former audit has, and listed words that no file has any longer. */
function changes(
  lists: Readonly<Record<string, readonly string[]>>,
  now: ReadonlyMap<string, string>,
  ownNames: boolean,
): { fresh: string[]; gone: string[] } {
  const listed = Object.entries(lists).flatMap(([ours, written]) => (ownNames ? [ours, ...written] : [...written]));
  const known = new Set(listed.map(folded));
  const written = Object.values(lists).flat();
  return {
    fresh: [...now].filter(([word]) => !known.has(word)).map(([, word]) => word),
    gone: written.filter((word) => !now.has(folded(word))),
  };
}

function told(about: string, { fresh, gone }: { fresh: readonly string[]; gone: readonly string[] }): readonly Doubt[] {
  return [
    ...(fresh.length > 0 ? [doubt('like', words.like.wordsFresh(about, fresh))] : []),
    ...(gone.length > 0 ? [doubt('like', words.like.wordsGone(about, gone))] : []),
  ];
}

/** Words under `values` and `visits`, and codes under `complications`, that are new or gone since the former audit. */
export function changedWords(
  former: Plan,
  files: readonly CarriedFile[],
): Readonly<Record<'values' | 'complications' | 'follow_up', readonly Doubt[]>> {
  const values = Object.entries(former.values).flatMap(([field, lists]) =>
    told(field, changes(lists, wordsNow(field, files), true)),
  );
  const codes = wordsNow('complication', files);
  const complications = codes.size === 0 ? [] : told('complication', changes(former.complications, codes, false));
  const labels = wordsNow('visit', files);
  const { visits, before } = former.follow_up;
  const lists = { ...Object.fromEntries(visits.map(({ name, labels: own }) => [name, own])), before: before.labels };
  return { values, complications, follow_up: labels.size === 0 ? [] : told('visit', changes(lists, labels, true)) };
}
