import { splitDate } from '../../src/intake/date.js';
import { type Delimiter, delimiterCharacters, judgeDelimiter } from '../../src/intake/delimiter.js';
import { headerWords } from '../../src/propose/header-words.js';
import { matchesOf } from '../../src/propose/phrases.js';
import { readRecords } from '../ingest/records.js';

/** Where the table of a file begins. */
export interface TopRows {
  delimiter: Delimiter;
  /** Row of the headers as a spreadsheet shows it. */
  headerRow: number;
  /** For each header the cell of a row of groups above it, carried on to the right; '' none. */
  groups: readonly string[];
}

/** Rows in which a header is looked for, and rows below it that must fit. */
const topRows = 30;
const rowsBelow = 50;

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');
const filledCells = (cells: readonly string[]): number => cells.filter((cell) => cell.trim() !== '').length;

/** Whether a cell can be a header: words, and no number or date. */
function isHeaderLike(cell: string): boolean {
  const text = cell.trim();
  return /\p{L}/u.test(text) && text.length <= 80 && splitDate(text) === undefined;
}

/** How much a row is like a row of headers: words of the trade count double. */
function headerScore(cells: readonly string[]): number {
  const distinct = [...new Set(cells.filter(isHeaderLike).map((cell) => cell.trim()))];
  const known = distinct.filter((cell) => matchesOf(headerWords(cell).words).length > 0);
  return distinct.length + known.length;
}

/** Whether most rows below have the cells that a row of headers asks for. */
function fitsBelow(header: readonly string[], below: readonly (readonly string[])[]): boolean {
  const named = header.findLastIndex((cell) => cell.trim() !== '') + 1;
  const rows = below.filter((cells) => !isBlank(cells)).slice(0, rowsBelow);
  const fitting = rows.filter((cells) => cells.length >= named && isBlank(cells.slice(header.length)));
  return rows.length === 0 || fitting.length >= 0.8 * rows.length;
}

/** The first records of a file; the last one of a text that was cut off may be half. */
async function firstRecords(text: string, separator: string, separatorLine: boolean): Promise<readonly string[][]> {
  const records: string[][] = [];
  async function* whole(): AsyncGenerator<string> {
    yield text;
  }
  await readRecords(whole(), separator, (cells) => {
    if (records.length < topRows + rowsBelow + 2) records.push(cells);
  });
  return separatorLine ? records.slice(1) : records;
}

/** A row of groups: as wide as the header, with cells that span those to their right. */
function groupsAbove(above: readonly string[] | undefined, width: number): readonly string[] {
  const nothing = Array.from({ length: width }, () => '');
  if (!above || above.length > width || filledCells(above) === 0 || filledCells(above) === above.length) return nothing;
  if (above.length < width && filledCells(above) < 2) return nothing;
  let last = '';
  return nothing.map((_, at) => {
    const cell = (above[at] ?? '').trim();
    if (cell !== '') last = cell;
    return last;
  });
}

interface Candidate extends TopRows {
  score: number;
}

function candidatesIn(records: readonly string[][], delimiter: Delimiter): readonly Candidate[] {
  return records.slice(0, topRows).flatMap((cells, at) => {
    const below = records.slice(at + 1);
    if (filledCells(cells) < 2 || !fitsBelow(cells, below)) return [];
    const groups = groupsAbove(records[at - 1], cells.length);
    return [{ delimiter, headerRow: at + 1, groups, score: headerScore(cells) }];
  });
}

/**
 * Finds the row of headers at the beginning of a file: of the rows that those below fit, the one with the most words,
 * and of equal ones the first. The delimiter is judged as `run` does it.
 *
 * @param text  the beginning of the file, decoded
 * @returns undefined where no row is like a row of headers
 */
export async function findTopRows(text: string): Promise<TopRows | undefined> {
  const judged = Array.from({ length: topRows }, (_, at) => judgeDelimiter(text, at + 1));
  const delimiters = [...new Set(judged.flatMap(({ delimiter }) => delimiter ?? []))];
  const candidates: Candidate[] = [];
  for (const delimiter of delimiters) {
    const records = await firstRecords(text, delimiterCharacters[delimiter], judged[0]?.separatorLine ?? false);
    candidates.push(...candidatesIn(records, delimiter));
  }
  const [best] = candidates.toSorted((a, b) => b.score - a.score || a.headerRow - b.headerRow);
  return best && best.score >= 2 ? best : undefined;
}
