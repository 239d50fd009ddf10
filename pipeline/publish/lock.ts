import { hostname } from 'node:os';
import type { Io } from '../io.js';
import { readAll } from './digest.js';

/** Who holds the lock: one process of one machine. The lock is removed with the run and is part of no report. */
const own = `${process.pid} ${hostname()}`;

/**
 * Whether a process that still runs is writing this report. A process of another machine (a shared drive)
 * cannot be asked and counts as running.
 */
export async function isLocked(io: Io, path: string): Promise<boolean> {
  if (!(await io.stat(path))) return false;
  const holder = new TextDecoder().decode(await readAll(io, path)).trim();
  const [pid, ...host] = holder.split(' ');
  if (holder === own) return false;
  return host.join(' ') !== hostname() || isRunning(Number(pid));
}

/** Takes the lock; false where another process was quicker. A lock that cannot be read back is given up. */
export async function takeLock(io: Io, path: string): Promise<boolean> {
  if (await isLocked(io, path)) return false;
  await io.write(path, new TextEncoder().encode(own));
  try {
    return new TextDecoder().decode(await readAll(io, path)) === own;
  } catch (error) {
    await io.remove(path);
    throw error;
  }
}

function isRunning(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    return process.kill(pid, 0); // signal 0 asks and does nothing
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'; // runs, under another user
  }
}
