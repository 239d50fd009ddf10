import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { deidentify } from '../../pipeline/commands/deidentify.js';
import type { Reply } from '../../pipeline/commands/reply.js';
import type { Request } from '../../pipeline/deidentify/request.js';

/** A folder of the disk that is gone when the test has ended. */
export interface Folder {
  /** A path inside it. */
  at(...names: readonly string[]): string;
  put(name: string, content: string | Uint8Array): string;
  /** Every file below a path of it, by its path relative to that. */
  filesBelow(name: string): ReadonlyMap<string, Buffer>;
  remove(): void;
}

export function newFolder(): Folder {
  const root = mkdtempSync(join(tmpdir(), 'halfdiopter-deidentify-'));
  const at = (...names: readonly string[]): string => join(root, ...names);
  return {
    at,
    put(name, content) {
      mkdirSync(dirname(at(name)), { recursive: true });
      writeFileSync(at(name), content);
      return at(name);
    },
    filesBelow(name) {
      const found = readdirSync(at(name), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
      return new Map(
        found.map((entry) => {
          const path = join(entry.parentPath, entry.name);
          return [path.slice(at(name).length + 1), readFileSync(path)];
        }),
      );
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}

/** The command as somebody without a terminal gives it. */
export function run(
  folder: Folder,
  files: readonly string[],
  more: Partial<Request> = {},
  signal: AbortSignal = new AbortController().signal,
): Promise<Reply> {
  const request: Request = {
    files: files.map((file) => folder.at(file)),
    codebook: folder.at('clinic', 'codes.csv'),
    out: folder.at('copies'),
    patient: [],
    surgeryDate: [],
    keep: [],
    order: true,
    yes: false,
    ...more,
  };
  mkdirSync(folder.at('clinic'), { recursive: true });
  return deidentify(request, undefined, () => {}, signal);
}
