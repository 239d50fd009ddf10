import { nearest } from '../../src/plan/nearest.js';
import type { Io } from '../io.js';

/** One file that audit.yaml names: itself, or a pattern that meets none. */
export interface SourceFile {
  /** Index into `plan.sources`. */
  source: number;
  path: string;
  /** Whether it exists; where not, `nearest` is the name of a file that is there. */
  found: boolean;
  nearest: string | undefined;
}

/**
 * Whether a name fits a pattern in which `*` stands for any run of characters. A name that begins with a dot fits
 * only a pattern that does: office programs leave such files beside an open one.
 */
export function fitsPattern(name: string, pattern: string): boolean {
  if (name.startsWith('.') && !pattern.startsWith('.')) return false;
  const parts = pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${parts.join('[^/]*')}$`, 's').test(name);
}

/** Paths that fit a pattern, folder by folder, each in name order. */
async function matching(pattern: string, io: Io): Promise<readonly string[]> {
  let folders = [''];
  for (const part of pattern.split('/')) {
    const next: string[] = [];
    for (const folder of folders) {
      if (!part.includes('*')) next.push(folder + part);
      else for (const name of await io.list(folder)) if (fitsPattern(name, part)) next.push(folder + name);
    }
    folders = next.map((path) => `${path}/`);
  }
  const found: string[] = [];
  for (const path of folders.map((folder) => folder.slice(0, -1))) {
    if ((await io.stat(path))?.kind === 'file') found.push(path);
  }
  return found;
}

/**
 * The files of a source, in the order in which they are read: as listed, a pattern's in name order, each once.
 */
export async function filesOfSource(
  source: number,
  patterns: readonly string[],
  io: Io,
): Promise<readonly SourceFile[]> {
  const files = new Map<string, SourceFile>();
  for (const pattern of patterns) {
    const paths = pattern.includes('*') ? await matching(pattern, io) : [pattern];
    for (const path of paths) {
      const found = (await io.stat(path)) !== undefined;
      if (found) files.set(path, { source, path, found, nearest: undefined });
    }
    if (paths.some((path) => files.has(path))) continue;
    const folder = pattern.includes('/') ? pattern.slice(0, pattern.lastIndexOf('/') + 1) : '';
    const like = nearest(pattern.slice(folder.length), await io.list(folder));
    files.set(pattern, { source, path: pattern, found: false, nearest: like && folder + like });
  }
  return [...files.values()];
}
