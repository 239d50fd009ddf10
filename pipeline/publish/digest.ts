import { createHash } from 'node:crypto';
import type { Io } from '../io.js';

/** SHA-256 of bytes, hexadecimal. */
export function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** SHA-256 of a file, read in pieces. */
export async function fileSha256(io: Io, path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of io.open(path)) hash.update(piece);
  return hash.digest('hex');
}

/** Bytes of a whole file. */
export async function readAll(io: Io, path: string): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of io.open(path)) pieces.push(piece);
  return Buffer.concat(pieces);
}
