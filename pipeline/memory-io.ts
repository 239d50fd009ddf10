import type { Io } from './io.js';

/** Files held in memory; `files` shows what has been written, by path. */
export interface MemoryIo extends Io {
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/** A path without `.`, `..` and doubled slashes; '' is the folder itself. */
function plainPath(path: string): string {
  const parts: string[] = [];
  for (const part of path.split('/')) {
    if (part === '..' && parts.length > 0 && parts.at(-1) !== '..') parts.pop();
    else if (part !== '' && part !== '.') parts.push(part);
  }
  return parts.join('/');
}

/** `path` as seen from `folder`, or undefined where it does not lie below it. */
function below(folder: string, path: string): string | undefined {
  if (folder === '') return path;
  return path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : undefined;
}

/**
 * Files of no disk: for tests, and for a run whose input is already in memory.
 *
 * @param initial  content by path; text stands for its UTF-8 bytes
 */
export function memoryIo(initial: Readonly<Record<string, string | Uint8Array>> = {}): MemoryIo {
  const files = new Map<string, Uint8Array>();
  const put = (path: string, content: string | Uint8Array): void => {
    files.set(plainPath(path), typeof content === 'string' ? new TextEncoder().encode(content) : content.slice());
  };
  for (const [path, content] of Object.entries(initial)) put(path, content);
  const inside = (folder: string): string[] =>
    [...files.keys()].filter((path) => path === folder || below(folder, path) !== undefined);

  return {
    files,
    async *open(path) {
      const bytes = files.get(plainPath(path));
      if (!bytes) throw new Error(`memoryIo: there is no file ${path}`);
      yield bytes;
    },
    async list(folder) {
      const names = inside(plainPath(folder)).map((path) => below(plainPath(folder), path)?.split('/')[0]);
      return [...new Set(names.filter((name) => name !== undefined))].sort();
    },
    async stat(path) {
      const bytes = files.get(plainPath(path));
      if (bytes) return { kind: 'file', bytes: bytes.length };
      return inside(plainPath(path)).length > 0 ? { kind: 'folder', bytes: 0 } : undefined;
    },
    async write(path, bytes) {
      put(path, bytes);
    },
    async rename(from, to) {
      const [old, fresh] = [plainPath(from), plainPath(to)];
      const moved = inside(old);
      if (moved.length === 0) throw new Error(`memoryIo: there is nothing called ${from}`);
      if (inside(fresh).length > 0 && !files.has(fresh)) throw new Error(`memoryIo: the folder ${to} is not empty`);
      for (const path of moved) {
        const bytes = files.get(path);
        files.delete(path);
        if (bytes) files.set(fresh + path.slice(old.length), bytes);
      }
    },
    async remove(path) {
      for (const found of inside(plainPath(path))) files.delete(found);
    },
  };
}
