import { createReadStream } from 'node:fs';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import type { Io } from './io.js';

/** Bytes of a file that are read at a time. */
const chunk = 1 << 20;

/** What `read` resolves to, or undefined where nothing of that name exists. */
async function whereThere<T>(read: Promise<T>): Promise<T | undefined> {
  try {
    return await read;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined;
    throw error;
  }
}

/** UTF-16 order, which no locale changes. */
function byUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/**
 * Files of a disk.
 *
 * @param root  the folder that paths are relative to: that of audit.yaml
 */
export function nodeIo(root: string): Io {
  const at = (path: string): string => resolve(root, path);
  return {
    open: (path) => createReadStream(at(path), { highWaterMark: chunk }),
    list: async (folder) => ((await whereThere(readdir(at(folder)))) ?? []).sort(byUnit),
    async stat(path) {
      const found = await whereThere(stat(at(path)));
      return found && { kind: found.isDirectory() ? 'folder' : 'file', bytes: found.size };
    },
    async write(path, bytes) {
      await mkdir(dirname(at(path)), { recursive: true });
      await writeFile(at(path), bytes);
    },
    rename: (from, to) => rename(at(from), at(to)),
    remove: (path) => rm(at(path), { recursive: true, force: true }),
  };
}
