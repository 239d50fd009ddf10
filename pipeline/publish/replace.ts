import type { Io } from '../io.js';
import type { ReportFolder } from './report-folder.js';

/** One file of a report: where it goes, and its bytes. */
export interface OutputFile {
  path: string;
  bytes: Uint8Array;
}

/** A file of text, in UTF-8. */
export function textFile(path: string, text: string): OutputFile {
  return { path, bytes: Buffer.from(text) };
}

/**
 * Puts the finished folder in place of the former report. A folder cannot be renamed onto a full one, so the
 * former report steps aside for the moment between two renames, and comes back if the second one fails.
 */
export async function moveIntoPlace(io: Io, { target, fresh, old }: ReportFolder): Promise<void> {
  const former = (await io.stat(target)) !== undefined;
  await io.remove(old);
  if (former) await io.rename(target, old);
  try {
    await io.rename(fresh, target);
  } catch (error) {
    if (former) await io.rename(old, target);
    throw error;
  }
  await io.remove(old);
}

/** Replaces a folder that holds nobody's work (the check folder): written aside, then renamed. */
export async function replaceFolder(io: Io, folder: string, files: readonly OutputFile[]): Promise<void> {
  const aside = folder.replace(/([^/]+)$/, '.$1.new');
  try {
    await io.remove(aside);
    for (const { path, bytes } of files) await io.write(`${aside}/${path}`, bytes);
    await io.remove(folder);
    await io.rename(aside, folder);
  } catch (error) {
    await io.remove(aside);
    throw error;
  }
}
