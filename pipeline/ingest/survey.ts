import { isAscii } from 'node:buffer';
import { type EncodingJudge, type EncodingJudgement, encodingJudge } from '../../src/intake/encoding.js';
import type { Io } from '../io.js';
import { plainCheck } from './plain-check.js';

/** What the bytes of a file say before a single cell is read. */
export interface Survey {
  bytes: number;
  /** The beginning of the file. */
  sample: Uint8Array;
  judged: EncodingJudgement;
  /** Whether NUL stands in it, which belongs into UTF-16 alone. */
  holdsNul: boolean;
  /** Whether its rows and cells may be told by their bytes, if it is UTF-8. */
  isPlain: boolean;
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

/** Bytes that are looked at together. */
const stretch = 4096;

/**
 * Hands on only what may tell encodings apart: the beginning, and stretches with a NUL or a byte beyond ASCII. Exports
 * are ASCII nearly everywhere, and the judge looks at bytes one by one.
 */
function telling(judge: EncodingJudge): (piece: Uint8Array) => void {
  let seen = 0;
  let insideCharacter = false;
  return (piece) => {
    for (let at = 0; at < piece.length; at += stretch) {
      const part = piece.subarray(at, at + stretch);
      const says = seen < stretch || insideCharacter || !isAscii(part) || part.includes(0);
      if (says) judge.push(part);
      seen += part.length;
      insideCharacter = (part.at(-1) as number) >= 0x80;
    }
  };
}

/** Reads a file once from end to end: UTF-8 is known from other encodings only by the last byte. */
export async function survey(path: string, io: Io, passed: (bytes: number) => void): Promise<Survey> {
  const judge = encodingJudge();
  const look = telling(judge);
  const sample: Uint8Array[] = [];
  let bytes = 0;
  let holdsNul = false;
  const plain = plainCheck();
  for await (const piece of bytesOf(path, io, passed)) {
    look(piece);
    holdsNul ||= piece.includes(0);
    plain.push(piece);
    if (bytes < sampleBytes) sample.push(piece.slice(0, sampleBytes - bytes));
    bytes += piece.length;
  }
  return { bytes, sample: Buffer.concat(sample), judged: judge.verdict(), holdsNul, isPlain: plain.isPlain() };
}
