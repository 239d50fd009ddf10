import { delimiterCharacters } from '../../src/intake/delimiter.js';
import { readRecords } from '../ingest/records.js';
import type { TopRows } from '../propose/top-rows.js';

/** Letters from which on a cell is a sentence rather than a label. */
const longCell = 40;

/**
 * Which columns hold free text, by the beginning of a file: those of which a third of the filled cells are long. Their
 * cells are not kept, so that memory grows with what is copied and not with the text.
 *
 * @param text  the beginning of the file, decoded
 * @returns whether a column is one of them, by its index
 */
export async function freeTextColumns(
  text: string,
  { delimiter, headerRow }: TopRows,
): Promise<(index: number) => boolean> {
  const filled: number[] = [];
  const long: number[] = [];
  let row = 0;
  async function* whole(): AsyncGenerator<string> {
    yield text;
  }
  await readRecords(whole(), delimiterCharacters[delimiter], (cells) => {
    if (++row <= headerRow) return;
    cells.forEach((cell, index) => {
      const { length } = cell.trim();
      if (length > 0) filled[index] = (filled[index] ?? 0) + 1;
      if (length > longCell) long[index] = (long[index] ?? 0) + 1;
    });
  });
  return (index) => 3 * (long[index] ?? 0) > (filled[index] ?? 0);
}
