import { copyNames } from '../../src/deidentify/copy-names.js';
import { type KnownPersons, knownPersons } from '../../src/deidentify/known-persons.js';
import { foldedHeader } from '../../src/findings/header.js';
import { en } from '../../src/words/index.js';
import { filesOfSource } from '../ingest/files.js';
import type { Io, Say } from '../io.js';
import type { NamedFile } from './choose.js';
import { type OpenedFile, openFile } from './open-file.js';
import type { Reason, Request } from './request.js';

/** A file that was read, under a name that may be shown. */
export interface ReadFile extends OpenedFile, NamedFile {
  path: string;
}

/** The name of each file as it may be shown. @param persons  who is known from the files; nobody before they are read */
export function labelsOf(paths: readonly string[], persons: KnownPersons): readonly string[] {
  const names = copyNames(paths, persons);
  return paths.map((path, at) =>
    names[at]?.renamed
      ? en.deidentify.file(at + 1)
      : path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1),
  );
}

/** Paths of the exports, patterns resolved, each once. */
export async function pathsOf(patterns: readonly string[], io: Io): Promise<readonly string[]> {
  return (await filesOfSource(0, patterns, io)).map(({ path }) => path);
}

async function bytesOf(paths: readonly string[], io: Io): Promise<number> {
  let bytes = 0;
  // Every file is read twice.
  for (const path of paths) bytes += 2 * ((await io.stat(path))?.bytes ?? 0);
  return bytes;
}

/** Reads all files, or says which cannot be. */
export async function readFiles(
  paths: readonly string[],
  { keep }: Request,
  io: Io,
  say: Say,
): Promise<{ files: readonly ReadFile[] } | { reasons: readonly Reason[] }> {
  const reviewed = new Set(keep.map(foldedHeader));
  const labels = labelsOf(paths, knownPersons([]));
  const total = await bytesOf(paths, io);
  const files: ReadFile[] = [];
  const reasons: Reason[] = [];
  let done = 0;
  for (const [at, path] of paths.entries()) {
    const label = labels[at] as string;
    const found = await openFile(
      path,
      (header) => reviewed.has(foldedHeader(header)),
      io,
      (bytes) => {
        done += bytes;
        say('ingest', done, total);
      },
    );
    if ('why' in found) reasons.push({ file: label, why: 'unfit', unfit: found });
    else files.push({ ...found, path, label });
  }
  return reasons.length > 0 ? { reasons } : { files };
}
