import { realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import type { ReportFolder } from '../publish/report-folder.js';

/** Where copies and code book go, every link followed. */
export interface Places {
  copies: ReportFolder;
  book: string;
}

/** Why copies cannot go where they were told to. */
export type Misplaced =
  | { kind: 'book-inside' }
  | { kind: 'book-is-folder' }
  | { kind: 'book-folder-missing' }
  | { kind: 'book-is-export' }
  | { kind: 'out-is-file' }
  | { kind: 'export-inside' };

async function kindOf(path: string): Promise<'file' | 'folder' | undefined> {
  try {
    return (await stat(path)).isDirectory() ? 'folder' : 'file';
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return undefined;
    throw error;
  }
}

/** The path behind all links, of a file or folder that may not exist yet. */
async function realOf(path: string): Promise<string> {
  const whole = resolve(path);
  if (await kindOf(whole)) return realpath(whole);
  return dirname(whole) === whole ? whole : join(await realOf(dirname(whole)), basename(whole));
}

/** Whether a path lies in a folder, or is it; letter case does not matter, since some disks do not know it. */
function isInside(path: string, folder: string): boolean {
  const [one, other] = [path.toLowerCase(), folder.toLowerCase()];
  return one === other || one.startsWith(other.endsWith(sep) ? other : other + sep);
}

function copiesAt(out: string, book: string): ReportFolder {
  const beside = (ending: string): string => join(dirname(out), `.${basename(out)}.${ending}`);
  const lock = join(dirname(book), `.${basename(book)}.lock`);
  return { target: out, fresh: beside('new'), old: beside('old'), lock, check: '' };
}

/**
 * Before anything is read: where do copies and code book go, and may they?
 *
 * @param typed  out folder, code book and exports, as typed
 */
export async function placesFor(typed: {
  out: string;
  codebook: string;
  files: readonly string[];
}): Promise<Places | Misplaced> {
  const out = await realOf(typed.out);
  const book = await realOf(typed.codebook);
  const files = await Promise.all(typed.files.map(realOf));
  if (isInside(book, out)) return { kind: 'book-inside' };
  if ((await kindOf(book)) === 'folder') return { kind: 'book-is-folder' };
  if ((await kindOf(dirname(book))) !== 'folder') return { kind: 'book-folder-missing' };
  if ((await kindOf(out)) === 'file') return { kind: 'out-is-file' };
  if (files.includes(book)) return { kind: 'book-is-export' };
  if (files.some((file) => isInside(file, out))) return { kind: 'export-inside' };
  return { copies: copiesAt(out, book), book };
}
