import { chmod, open, rename, rm } from 'node:fs/promises';
import { type BookFault, bookRows, type CodeBook, readCodeBook } from '../../src/deidentify/code-book.js';
import { delimitedLine } from '../../src/deidentify/delimited.js';
import { delimiterCharacters, judgeDelimiter } from '../../src/intake/delimiter.js';
import { encodingJudge } from '../../src/intake/encoding.js';
import { decoderOf } from '../ingest/decode.js';
import { readRecords } from '../ingest/records.js';
import type { Io } from '../io.js';
import { readAll } from '../publish/digest.js';

/** For the account that owns the book, and nobody else. */
const ownerOnly = 0o600;

/** Reads a code book; undefined where there is none yet. A spreadsheet may have saved it with another delimiter. */
export async function readBook(path: string, io: Io): Promise<CodeBook | BookFault | undefined> {
  if (!(await io.stat(path))) return undefined;
  const bytes = await readAll(io, path);
  const judge = encodingJudge();
  judge.push(bytes);
  const text = (await decoderOf(judge.verdict().encoding)).write(bytes);
  const { delimiter } = judgeDelimiter(text);
  if (!delimiter) return { fault: 'header', row: 1 };
  const rows: string[][] = [];
  async function* whole(): AsyncGenerator<string> {
    yield text;
  }
  const { openRecord } = await readRecords(whole(), delimiterCharacters[delimiter], (cells) => rows.push(cells));
  return openRecord > 0 ? { fault: 'quote', row: openRecord } : readCodeBook(rows);
}

/**
 * Writes a code book whole or not at all: aside, flushed to the disk, then renamed. No other account may read it at any
 * moment.
 */
export async function writeBook(path: string, book: CodeBook): Promise<void> {
  const aside = `${path}.new`;
  await rm(aside, { force: true });
  const file = await open(aside, 'wx', ownerOnly);
  try {
    await file.writeFile(
      bookRows(book)
        .map((row) => delimitedLine(row, ','))
        .join(''),
    );
    await file.sync();
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  } finally {
    await file.close();
  }
  await rename(aside, path);
}

/** Closes a book that others could read. */
export async function closeBook(path: string): Promise<void> {
  await chmod(path, ownerOnly);
}
