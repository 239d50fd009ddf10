import type { Fault } from '../records/plan.js';
import type { Words } from '../words/index.js';
import { aligned, labelled, screen, screenWidth, wrapped } from './layout.js';

/** The screen of an audit.yaml that is not there. */
export function noAuditScreen(
  audit: string,
  kind: 'missing' | 'folder' | 'unreadable',
  words: Words['screens'],
): string {
  const text = words.notStarted;
  return screen([
    wrapped({ missing: text.noFile, folder: text.isFolder, unreadable: text.unreadable }[kind](audit)),
    labelled(words.next, words.usage, { indent: 0, at: 7 }),
  ]);
}

/** The screen of an audit.yaml with faults: all of them, each with its line, in the order of the file. */
export function faultsScreen(
  audit: string,
  command: string,
  faults: readonly Fault[],
  words: Words['screens'],
): string {
  const text = words.notStarted;
  const title = faults.length === 1 ? text.title : text.faults(audit, String(faults.length));
  return screen([
    [title],
    ...faults.map(({ line, column, message, advice }) => [
      ...wrapped(`${text.fault(audit, line, column)} ${message}`),
      ...advice.flatMap(adviceLines),
    ]),
    labelled(words.next, text.nextFaults(audit, command), { indent: 0, at: 7 }),
  ]);
}

/** Advice bears its own label: it stands as it is where it fits (a line to write must), else it runs on below itself. */
function adviceLines(advice: string): readonly string[] {
  const [, label = '', text = ''] = /^(\S+)\s+(.*)$/.exec(advice) ?? [];
  if (advice.length + 2 <= screenWidth) return [`  ${advice}`];
  return labelled(label, text, { at: 12 });
}

/** Changed files that a screen names before it says how many more there are. */
const mostFiles = 12;

/** The screen of a run that would overwrite somebody's work. */
export function editedScreen(
  folder: string,
  files: readonly { file: string; how: 'changed' | 'added' }[],
  audit: string,
  words: Words['screens'],
): string {
  const text = words.notStarted;
  const rows = files.slice(0, mostFiles).map(({ file, how }) => [file, how === 'added' ? text.added : '']);
  const more = files.length > mostFiles ? [`  ${text.moreFiles(String(files.length - mostFiles))}`] : [];
  return screen([
    [
      ...wrapped(text.edited(folder, files.length)),
      ...aligned(rows),
      ...more,
      ...labelled(text.do, text.saveEdited, { at: 7 }),
    ],
    labelled(words.next, words.toReplace(audit), { indent: 0, at: 7 }),
  ]);
}

/** The screen of a report folder that cannot be written, by the code of the file system's answer. */
export function unwritableScreen(folder: string, code: string, next: string, words: Words['screens']): string {
  const text = words.notStarted;
  return screen([
    [
      ...wrapped(text.unwritable(folder)),
      ...labelled(text.why, text.reasons[code] ?? text.otherReason(code), { at: 7 }),
      ...labelled(text.do, text.mendFolder, { at: 7 }),
    ],
    labelled(words.next, next, { indent: 0, at: 7 }),
  ]);
}

/** The screen of a report that another run is writing. */
export function lockedScreen(folder: string, lock: string, next: string, words: Words['screens']): string {
  const text = words.notStarted;
  return screen([
    [...wrapped(text.locked(folder)), ...labelled(text.do, text.mendLock(lock), { at: 7 })],
    labelled(words.next, next, { indent: 0, at: 7 }),
  ]);
}
