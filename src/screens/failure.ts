import type { Words } from '../words/index.js';
import { labelled, screen } from './layout.js';

/**
 * The screen of a mistake of ours: what to report, without a value of the reader's data.
 *
 * @param lines  version, kind of error, places in our code
 */
export function failureScreen(lines: readonly string[], words: Words['screens']): string {
  const { title, report, next } = words.ourFault;
  return screen([
    [title],
    [report, ...lines.map((line) => `  ${line}`)],
    labelled(words.next, next, { indent: 0, at: 7 }),
  ]);
}
