import type { Plan } from '../../src/records/plan.js';
import type { Io } from '../io.js';
import { type EditedFile, editedFiles } from './edited.js';
import { isLocked } from './lock.js';
import { type ReportFolder, reportFolder } from './report-folder.js';

/** Why a report cannot be written. */
export type Obstacle =
  | { kind: 'unwritable'; folder: string; code: string }
  | { kind: 'locked'; folder: string; lock: string }
  | { kind: 'edited'; folder: string; files: readonly EditedFile[] };

/**
 * Before the first row is read: can the report be written, and would anybody's work be lost? Puts a former report
 * back that an interrupted run left half replaced.
 *
 * @returns what stands in the way; undefined where nothing does
 */
export async function prepare(plan: Plan, io: Io, { replace }: { replace: boolean }): Promise<Obstacle | undefined> {
  const folder = reportFolder(plan);
  const obstacle = await prepareCheck(plan, io);
  if (obstacle) return obstacle;
  if (await isLocked(io, folder.lock)) return { kind: 'locked', folder: folder.target, lock: folder.lock };
  await recover(io, folder);
  const files = replace ? [] : await editedFiles(io, folder.target);
  return files.length > 0 ? { kind: 'edited', folder: folder.target, files } : undefined;
}

/** The same for a command that writes only the folder `<name>.check`: proves that it can be written. */
export async function prepareCheck(plan: Plan, io: Io): Promise<Obstacle | undefined> {
  const { target, lock } = reportFolder(plan);
  const probe = `${lock}.probe`;
  try {
    await io.write(probe, new Uint8Array());
    await io.remove(probe);
    const entry = await io.stat(target);
    return entry?.kind === 'file' ? { kind: 'unwritable', folder: target, code: 'ENOTDIR' } : undefined;
  } catch (error) {
    return { kind: 'unwritable', folder: plan.outputs.folder, code: systemCode(error) };
  }
}

/** A run that died between its two renames left the former report under its resting name. */
async function recover(io: Io, { target, old }: ReportFolder): Promise<void> {
  if (!(await io.stat(old))) return;
  if (await io.stat(target)) await io.remove(old);
  else await io.rename(old, target);
}

/**
 * Code of an error of the file system, such as 'EACCES'.
 *
 * @throws the error itself, where it is none of the file system's
 */
export function systemCode(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (typeof code === 'string' && /^E[A-Z0-9]+$/.test(code)) return code;
  throw error;
}
