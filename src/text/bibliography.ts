import type { ReferenceKey } from '../words/en/references.js';
import type { Words } from '../words/index.js';

/** 'Authors. Title. Journal year;volume:pages'; some works are known without their title. */
const article = /^(.+?)\. (?:(.+)\. )?([A-Z][^.;]*?) (\d{4});(\d+):([\w–]+)(?: \(.*\))?$/;

/**
 * references.bib: the works that the methods paragraph cites, for BibTeX. What is no article of a journal stands as it
 * is printed, in `note`; so does the warning that details have to be checked.
 *
 * @param keys  in the order in which they are cited
 */
export function bibliography(keys: readonly ReferenceKey[], words: Words): string {
  return keys.map((key) => entry(key, words)).join('\n');
}

function entry(key: ReferenceKey, { tables }: Words): string {
  const { references, fromMemory } = tables.methods;
  const work: { text: string; memory?: boolean } = references[key];
  const warning = work.memory ? [fromMemory] : [];
  const found = article.exec(work.text);
  if (!found) return bibtex('misc', key, { note: [work.text, ...warning].join('; ') });
  const [, names = '', title, journal, year, volume, pages = ''] = found;
  const fields = {
    author: authors(names),
    ...(title === undefined ? {} : { title: `{${title}}` }),
    journal,
    year,
    volume,
    pages: pages.replace('–', '--'),
    ...(warning.length > 0 ? { note: warning.join('; ') } : {}),
  };
  return bibtex('article', key, fields);
}

/** 'Austin PC, Glynn RJ' → 'Austin, P. C. and Glynn, R. J.' */
function authors(names: string): string {
  const others = names.endsWith(' et al');
  const persons = names.replace(/ et al$/, '').split(', ');
  const written = persons.map((person) => {
    const at = person.lastIndexOf(' ');
    const initials = Array.from(person.slice(at + 1), (letter) => `${letter}.`).join(' ');
    return at < 0 ? person : `${person.slice(0, at)}, ${initials}`;
  });
  return [...written, ...(others ? ['others'] : [])].join(' and ');
}

function bibtex(kind: string, key: string, fields: Readonly<Record<string, string | undefined>>): string {
  const lines = Object.entries(fields).map(([name, value]) => `  ${name} = {${plain(value ?? '')}},`);
  return `@${kind}{${key},\n${lines.join('\n')}\n}\n`;
}

/** Signs that BibTeX reads as its own. */
function plain(text: string): string {
  return text.replace(/[&%$#_]/g, (sign) => `\\${sign}`);
}
