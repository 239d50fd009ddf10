import type { Io } from '../io.js';

/** Thrown inside a run when the reader pressed Ctrl-C. */
export class Interrupted extends Error {
  constructor() {
    super('interrupted');
    this.name = 'Interrupted';
  }
}

/**
 * Files that can no longer be read or written once the signal is given. Renaming and removing go on, so that a
 * run can clean up behind itself, and the two renames that replace a report are never torn apart.
 */
export function interruptible(io: Io, signal: AbortSignal): Io {
  const check = (): void => {
    if (signal.aborted) throw new Interrupted();
  };
  return {
    async *open(path) {
      for await (const piece of io.open(path)) {
        check();
        yield piece;
      }
    },
    async list(folder) {
      check();
      return io.list(folder);
    },
    async stat(path) {
      check();
      return io.stat(path);
    },
    async write(path, bytes) {
      check();
      await io.write(path, bytes);
    },
    rename: (from, to) => io.rename(from, to),
    remove: (path) => io.remove(path),
  };
}

/** Runs work with a signal that Ctrl-C gives; the default of Node, to die at once, stands again afterwards. */
export async function untilInterrupted<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const controller = new AbortController();
  const stop = (): void => controller.abort();
  process.on('SIGINT', stop);
  try {
    return await work(controller.signal);
  } finally {
    process.off('SIGINT', stop);
  }
}
