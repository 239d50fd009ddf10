import type { Io } from '../io.js';
import { fileSha256, readAll } from './digest.js';
import { manifestFile, type OutputEntry } from './manifest.js';
import { filesUnder } from './report-folder.js';

/** A file of the former report that is not as the run left it. */
export interface EditedFile {
  file: string;
  how: 'changed' | 'added';
}

/** Files that a desktop leaves in every folder it shows; nobody's work is lost with them. */
const litter = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);

/**
 * Files of the former report that differ from its manifest, or that no run wrote. A file that was removed is no
 * loss and is not named. A folder without a readable manifest was not written by a run: all of it is "added".
 */
export async function editedFiles(io: Io, target: string): Promise<readonly EditedFile[]> {
  const listed = await manifestOutputs(io, target);
  const edited: EditedFile[] = [];
  for (const file of await filesUnder(io, target)) {
    if (litter.has(file.split('/').at(-1) ?? '') || (file === manifestFile && listed)) continue;
    const hash = listed?.get(file);
    if (hash === undefined) edited.push({ file, how: 'added' });
    else if (hash !== (await fileSha256(io, `${target}/${file}`))) edited.push({ file, how: 'changed' });
  }
  return edited;
}

/** Hash by file as the manifest lists them, or undefined where there is no manifest that can be read. */
async function manifestOutputs(io: Io, target: string): Promise<ReadonlyMap<string, string> | undefined> {
  const path = `${target}/${manifestFile}`;
  if (!(await io.stat(path))) return undefined;
  try {
    const { outputs } = JSON.parse(new TextDecoder().decode(await readAll(io, path))) as { outputs: OutputEntry[] };
    return new Map(outputs.map((entry) => [entry.file, entry.sha256]));
  } catch (error) {
    // A manifest edited by hand may be no JSON, or lack the list; any other failure is not about its content.
    if (error instanceof SyntaxError || error instanceof TypeError) return undefined;
    throw error;
  }
}
