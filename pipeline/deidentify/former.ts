import type { Io } from '../io.js';
import { fileSha256, readAll } from '../publish/digest.js';
import { filesUnder } from '../publish/report-folder.js';

/** What a run leaves beside its copies, so that the next one knows them. */
export interface CopiesManifest {
  format: 1;
  /** Random name of the code book. */
  book: string;
  files: readonly { file: string; sha256: string }[];
}

export const manifestName = 'deidentification.json';

/** What stands in the out folder. */
export type Former =
  | { kind: 'nothing' }
  /** Files that no run wrote, or that were changed since. */
  | { kind: 'foreign' }
  | { kind: 'copies'; book: string; names: readonly string[] };

function manifestOf(text: string): CopiesManifest | undefined {
  try {
    const found = JSON.parse(text) as Partial<CopiesManifest>;
    const isWhole =
      found.format === 1 &&
      typeof found.book === 'string' &&
      Array.isArray(found.files) &&
      found.files.every(({ file, sha256 }) => typeof file === 'string' && typeof sha256 === 'string');
    return isWhole ? (found as CopiesManifest) : undefined;
  } catch {
    return undefined;
  }
}

/** Looks into the out folder: only what a former run wrote, byte for byte, may be replaced. */
export async function formerCopies(folder: string, io: Io): Promise<Former> {
  const names = await filesUnder(io, folder);
  if (names.length === 0) return { kind: 'nothing' };
  if (!names.includes(manifestName)) return { kind: 'foreign' };
  const manifest = manifestOf(new TextDecoder().decode(await readAll(io, `${folder}/${manifestName}`)));
  const listed = new Map(manifest?.files.map(({ file, sha256 }) => [file, sha256]));
  if (!manifest || names.length !== listed.size + 1) return { kind: 'foreign' };
  for (const name of names) {
    if (name === manifestName) continue;
    if (listed.get(name) !== (await fileSha256(io, `${folder}/${name}`))) return { kind: 'foreign' };
  }
  return { kind: 'copies', book: manifest.book, names: [...listed.keys()] };
}
