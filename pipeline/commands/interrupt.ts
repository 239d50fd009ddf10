import type { Io } from '../io.js';

/** Thrown inside a run when the reader pressed Ctrl-C. */
export class Interrupted extends Error {
  constructor() {
    super('interrupted');
    this.name = 'Interrupted';
  }
}

/**
 * Files that can no longer be read or written once the signal is given; what waits for a slow disk or a pipe waits no
 * longer. A write that has begun is let finish, and renaming and removing go on, so that a run can clean up behind
 * itself and the two renames that replace a report are never torn apart.
 */
export function interruptible(io: Io, signal: AbortSignal): Io {
  const given = new Promise<never>((_, reject) => {
    signal.addEventListener('abort', () => reject(new Interrupted()), { once: true });
    if (signal.aborted) reject(new Interrupted());
  });
  given.catch(() => {}); // nobody may be waiting when the signal comes
  const orInterrupted = <T>(work: Promise<T>): Promise<T> => Promise.race([given, work]);
  return {
    async *open(path) {
      const pieces = io.open(path)[Symbol.asyncIterator]();
      try {
        for (;;) {
          const { done, value } = await orInterrupted(pieces.next());
          if (done) return;
          yield value;
        }
      } finally {
        pieces.return?.().catch(() => {}); // closes the file; not waited for, since it may never answer
      }
    },
    list: (folder) => orInterrupted(io.list(folder)),
    stat: (path) => orInterrupted(io.stat(path)),
    async write(path, bytes) {
      if (signal.aborted) throw new Interrupted();
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
