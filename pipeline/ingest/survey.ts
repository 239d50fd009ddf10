import { type EncodingJudgement, encodingJudge } from '../../src/intake/encoding.js';
import type { Io } from '../io.js';

/** What the bytes of a file say before a single cell is read. */
export interface Survey {
  bytes: number;
  /** The beginning of the file. */
  sample: Uint8Array;
  judged: EncodingJudgement;
}

/** Enough for fifty rows of a wide export. */
const sampleBytes = 1 << 18;

/** A file that could not be opened or read to its end; what throws otherwise is our own mistake. */
export class ReadFailure extends Error {}

/** The bytes of a file, told piece by piece as they pass. @throws {ReadFailure} */
export async function* bytesOf(path: string, io: Io, passed: (bytes: number) => void): AsyncGenerator<Uint8Array> {
  const failed = (cause: unknown): never => {
    throw new ReadFailure(`${path} cannot be read`, { cause });
  };
  const pieces = io.open(path)[Symbol.asyncIterator]();
  try {
    for (;;) {
      const piece = await pieces.next().catch(failed);
      if (piece.done) return;
      passed(piece.value.length);
      yield piece.value;
    }
  } finally {
    await pieces.return?.();
  }
}

/** Reads a file once from end to end: UTF-8 is known from other encodings only by the last byte. */
export async function survey(path: string, io: Io, passed: (bytes: number) => void): Promise<Survey> {
  const judge = encodingJudge();
  const sample: Uint8Array[] = [];
  let bytes = 0;
  for await (const piece of bytesOf(path, io, passed)) {
    judge.push(piece);
    if (bytes < sampleBytes) sample.push(piece.slice(0, sampleBytes - bytes));
    bytes += piece.length;
  }
  return { bytes, sample: Buffer.concat(sample), judged: judge.verdict() };
}
