import { createHash } from 'node:crypto';
import { mkdir, open, rm } from 'node:fs/promises';
import type { Copy } from '../../src/deidentify/copy.js';
import { delimitedLine } from '../../src/deidentify/delimited.js';
import { Interrupted } from '../commands/interrupt.js';
import { type CopiesManifest, manifestName } from './former.js';

/** A file that is written in pieces. */
interface OutputText {
  file: string;
  pieces: Iterable<string>;
}

/** Lines that become bytes at a time. */
const linesAtOnce = 4096;

/**
 * The text of a copy, in pieces. A byte-order mark stands in front: whoever checks a copy opens it in a spreadsheet,
 * which misreads every sign beyond ASCII without one.
 */
export function* copyText({ header, units, rows, cellsOf }: Copy, delimiter: string): Generator<string> {
  let lines = [`\ufeff${delimitedLine(header, delimiter)}`];
  if (units) lines.push(delimitedLine(units, delimiter));
  for (const row of rows) {
    lines.push(delimitedLine(cellsOf(row), delimiter));
    if (lines.length < linesAtOnce) continue;
    yield lines.join('');
    lines = [];
  }
  yield lines.join('');
}

async function writeText(path: string, pieces: Iterable<string>, signal: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  const file = await open(path, 'wx');
  try {
    for (const piece of pieces) {
      if (signal.aborted) throw new Interrupted();
      hash.update(piece);
      await file.write(piece);
    }
  } finally {
    await file.close();
  }
  return hash.digest('hex');
}

/** Writes all files of a run into a folder that is nobody's yet, and last the list by which the next run knows them. */
export async function writeFolder(
  folder: string,
  book: string,
  files: readonly OutputText[],
  signal: AbortSignal,
): Promise<void> {
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  const written: { file: string; sha256: string }[] = [];
  for (const { file, pieces } of files) {
    written.push({ file, sha256: await writeText(`${folder}/${file}`, pieces, signal) });
  }
  const manifest: CopiesManifest = { format: 1, book, files: written };
  await writeText(`${folder}/${manifestName}`, [`${JSON.stringify(manifest, null, 2)}\n`], signal);
}
