import { foldedText } from './header-words.js';

/** Formulas by the name that audit.yaml knows them by, and how headers write them. @source published formulas */
export const formulas: readonly { name: string; names: readonly string[] }[] = [
  { name: 'SRK/T', names: ['srk t', 'srkt'] },
  { name: 'Holladay 1', names: ['holladay 1', 'holladay i', 'holladay'] },
  { name: 'Hoffer Q', names: ['hoffer q', 'hofferq'] },
  { name: 'Haigis', names: ['haigis'] },
];

/** The formula that a header names; undefined where it names none of the published ones. */
export function formulaNamed(header: string): string | undefined {
  const text = foldedText(header).replace(/[^a-z0-9]+/g, ' ');
  // "Holladay 2" is another formula than the first.
  return formulas.find(({ names }) => names.some((name) => text.includes(name) && !text.includes(`${name} 2`)))?.name;
}
