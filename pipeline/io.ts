/**
 * The only way a stage reaches files: handed in, so that tests run the whole pipeline in memory. Paths use '/'
 * and are relative to the folder of audit.yaml.
 */
export interface Io {
  /** Bytes of a file, in order. @throws when it cannot be read */
  open(path: string): AsyncIterable<Uint8Array>;
  /** Names in a folder, sorted by UTF-16 unit; empty where there is no such folder. */
  list(folder: string): Promise<readonly string[]>;
  stat(path: string): Promise<{ kind: 'file' | 'folder'; bytes: number } | undefined>;
  /** Writes a whole file, and the folders above it. */
  write(path: string, bytes: Uint8Array): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** Removes a file, or a folder with all that is in it; nothing happens where there is none. */
  remove(path: string): Promise<void>;
}

/** Told as work goes on: which stage, how much of how much. */
export type Say = (stage: string, done: number, total: number) => void;
