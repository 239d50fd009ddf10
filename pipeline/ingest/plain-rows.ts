import { type ByteWords, hashSeed, nextHash } from '../../src/columns/byte-words.js';

/** A row of a plain file whose cells are known by their bytes. */
export interface CodedRow {
  cells: number;
  /** For each cell its code in the column's dictionary. */
  codes: Int32Array;
}

/** What takes the rows of a plain file. */
export interface RowTaker {
  /** Dictionaries of the columns; none until the header is known. Cells beyond them have none. */
  readonly dictionaries: readonly ByteWords[];
  /** The next row, if it is an ordinary row of data; else false, and nothing has been taken. */
  takeCoded(row: CodedRow): boolean;
  /** The next row, as text. */
  take(cells: readonly string[]): void;
}

const lineFeed = 10;
const carriageReturn = 13;

/** Rows of one file: splits lines where they end, and cells where they end, by bytes. */
class PlainLines {
  records = 0;
  private readonly text = new TextDecoder('utf-8', { ignoreBOM: true });
  private row: CodedRow = { cells: 0, codes: new Int32Array(0) };

  constructor(
    private readonly separator: number,
    private readonly taker: RowTaker,
  ) {}

  /** Takes all lines that end within the bytes; gives how many bytes those were. */
  takeLines(bytes: Uint8Array): number {
    let at = 0;
    for (let end = bytes.indexOf(lineFeed); end >= 0; end = bytes.indexOf(lineFeed, at)) {
      this.takeLine(bytes, at, end > at && bytes[end - 1] === carriageReturn ? end - 1 : end);
      at = end + 1;
    }
    return at;
  }

  takeLine(bytes: Uint8Array, start: number, end: number): void {
    this.records++;
    if (this.isTakenByCode(bytes, start, end)) return;
    this.taker.take(this.cellsOf(bytes, start, end));
  }

  private isTakenByCode(bytes: Uint8Array, start: number, end: number): boolean {
    const { dictionaries } = this.taker;
    if (dictionaries.length === 0) return false;
    if (this.row.codes.length < dictionaries.length) this.row.codes = new Int32Array(dictionaries.length);
    const { codes } = this.row;
    let cell = 0;
    let from = start;
    let hash = hashSeed;
    for (let i = start; i <= end; i++) {
      const byte = i < end ? (bytes[i] as number) : this.separator;
      if (byte !== this.separator) {
        hash = nextHash(hash, byte);
        continue;
      }
      const words = dictionaries[cell];
      if (words) codes[cell] = words.codeOf(bytes, from, i, hash);
      cell++;
      from = i + 1;
      hash = hashSeed;
    }
    this.row.cells = cell;
    return this.taker.takeCoded(this.row);
  }

  private cellsOf(bytes: Uint8Array, start: number, end: number): readonly string[] {
    return this.text.decode(bytes.subarray(start, end)).split(String.fromCharCode(this.separator));
  }
}

/**
 * Splits a plain file into rows, one that `plainCheck` has passed. The parser of record reads the same cells from it, some
 * times slower; anything else is the parser's.
 *
 * @param pieces     the bytes of the file, in pieces of any size
 * @param separator  one ASCII character
 * @param markBytes  bytes at the beginning that say UTF-8
 * @returns how many rows there are
 */
export async function readPlainRows(
  pieces: AsyncIterable<Uint8Array>,
  separator: string,
  markBytes: number,
  taker: RowTaker,
): Promise<number> {
  const lines = new PlainLines(separator.charCodeAt(0), taker);
  let rest: Uint8Array = new Uint8Array();
  let skip = markBytes;
  for await (const piece of pieces) {
    const own = piece.subarray(skip);
    skip = Math.max(0, skip - piece.length);
    const bytes = rest.length > 0 ? Buffer.concat([rest, own]) : own;
    rest = bytes.slice(lines.takeLines(bytes));
  }
  if (rest.length > 0) lines.takeLine(rest, 0, rest.length);
  return lines.records;
}
