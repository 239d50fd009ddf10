import { type ByteColumnBuilder, byteColumnBuilder } from '../../src/columns/byte-column.js';
import { type ByteWords, byteWords } from '../../src/columns/byte-words.js';
import { type WordColumn, type WordColumnBuilder, wordColumnBuilder } from '../../src/columns/word-column.js';
import { mostWords, type PassingWords, passingWords } from './identifier-gate.js';
import { cellMarks, type Mark, marks, type OddRow, oddRowTest } from './odd-rows.js';
import type { CodedRow, RowTaker } from './plain-rows.js';
import { swallowedRows } from './records.js';
import { rowNumbers } from './row-numbers.js';
import { isUnitsRow } from './units-row.js';
import type { Layout } from './wanted.js';

/** How the records of one file are to be taken. */
export interface TableForm {
  /** The character between cells. */
  separator: string;
  /** Whether the first record is a spreadsheet's `sep=` line, which it does not show as a row. */
  separatorLine: boolean;
  /** Whether cells may be padded with NUL. */
  holdsNul: boolean;
  /** Cells that most rows have, blank ones at the end among them; 0 where that is not known. */
  usualCells: number;
  /** Where the cells of a plain file begin; undefined where the file is read as text. */
  plainFrom: number | undefined;
  headerRow: number;
  unitsRow: 'auto' | 'yes' | 'no';
  /** Which columns of a header are kept. */
  layoutOf(header: readonly string[]): Layout;
}

/** A row whose cells do not fit the header. */
export interface RaggedRow {
  row: number;
  cells: number;
}

/** One file, read to its end. Every record is a row of the table, ragged, or passed over. */
export interface TableRead {
  header: readonly string[] | undefined;
  layout: Layout;
  columns: readonly WordColumn[];
  rows: number;
  rowNumber(row: number): number;
  ragged: readonly RaggedRow[];
  /** Cells of the row of units below the header; none where there is no such row. */
  units: readonly string[];
  /** Header, rows above it, units, blank rows, and the odd rows. */
  passedOver: number;
  /** Rows that are no data, though they are filled. */
  odd: readonly { row: number; kind: OddRow }[];
  /** A row further down that has the wanted headers which the header has not; 0 where there is none. */
  likelierHeader: number;
  /** Cells that held NUL. */
  nulCells: number;
  /** All rows of the file. */
  records: number;
  /** Row at which a quoted cell swallows the rows below it; 0 where none does. */
  quoteRow: number;
  /** Header index and `identifierKinds` index of every column that is not kept and whose cells identify a person. */
  passing: readonly { index: number; kind: number }[];
}

/** How far below the header another one is looked for, where columns are missing. */
const rowsLookedAt = 30;

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/** Builds a table from records as they come. */
export class TableReader implements RowTaker {
  private header: readonly string[] | undefined;
  private layout: Layout = { kept: [], uses: [], unsettled: [] };
  /** Cells that a full row has at least: headers at the end may be blank. */
  private namedCells = 0;
  private builders: readonly (WordColumnBuilder | undefined)[] = [];
  /** One watcher a column, for the cells that are not kept; the last is for cells beyond the header. */
  private watchers: readonly PassingWords[] = [];
  private readonly numbers = rowNumbers();
  private readonly ragged: RaggedRow[] = [];
  private row: number;
  private rows = 0;
  private passedOver = 0;
  private quoteRow = 0;
  private units: readonly string[] | undefined;
  private readonly odd: { row: number; kind: OddRow }[] = [];
  private oddKind: (cells: readonly string[]) => OddRow | undefined = () => undefined;
  private likelierHeader = 0;
  private nulCells = 0;
  /** Whether the next filled row may state units. */
  private belowHeader = true;
  /** Of a plain file: one a column of the header. */
  dictionaries: readonly ByteWords[] = [];
  private coded: readonly (ByteColumnBuilder | undefined)[] = [];
  private markOf: ((word: string, index: number) => Mark) | undefined;

  constructor(private readonly form: TableForm) {
    this.row = form.separatorLine ? -1 : 0;
  }

  /** One record of the file, in order. */
  take(record: readonly string[]): void {
    this.row++;
    if (this.row === 0) return;
    const cells = this.form.holdsNul ? this.withoutPadding(record) : record;
    if (this.header === undefined) this.takeTop(cells);
    else if (this.isPassedOver(cells)) this.passedOver++;
    else this.takeRow(cells, this.header);
  }

  /** One row of a plain file by its codes, if it is an ordinary row of data: anything else is taken as text. */
  takeCoded({ cells, codes }: CodedRow): boolean {
    const isOrdinary = this.isOrdinary(cells, codes);
    if (isOrdinary) {
      this.row++;
      for (let index = 0; index < cells; index++) this.takeCode(index, codes[index] as number);
      this.keepRow(cells);
    }
    this.forget();
    return isOrdinary;
  }

  /** As many cells as the header, below where headers are looked for, with an eye, and no word of the header. */
  private isOrdinary(cells: number, codes: Int32Array): boolean {
    const { form, dictionaries, belowHeader, row } = this;
    if (belowHeader || row <= form.headerRow + rowsLookedAt) return false;
    if (cells !== dictionaries.length || cells < form.usualCells) return false;
    let namesEye = false;
    for (let index = 0; index < cells; index++) {
      const mark = this.markAt(index, codes[index] as number);
      if (mark === marks.odd) return false;
      if (mark === marks.eye) namesEye = true;
    }
    return namesEye;
  }

  private markAt(index: number, code: number): number {
    const words = this.dictionaries[index] as ByteWords;
    if (words.marks[code] === marks.unknown) words.marks[code] = this.markOf?.(words.word(code), index) ?? marks.odd;
    return words.marks[code] as number;
  }

  private takeCode(index: number, code: number): void {
    const column = this.coded[index];
    if (column) column.pushCode(code);
    else this.watchers[index]?.push((this.dictionaries[index] as ByteWords).word(code));
  }

  /** Of columns that are not kept no more words are known than a while ago: free text must cost no memory. */
  private forget(): void {
    for (let index = 0; index < this.dictionaries.length; index++) {
      const words = this.dictionaries[index] as ByteWords;
      if (!this.coded[index] && words.size > mostWords) words.clear();
    }
  }

  /** @param openRecord  the record, counted from 1, in which a quoted cell was left open; 0 where none was */
  finish(openRecord: number): TableRead {
    const { header, layout, rows, ragged, passedOver, numbers, odd, likelierHeader, nulCells } = this;
    const columns = layout.kept.map((index) => (this.builders[index] as WordColumnBuilder).finish());
    return {
      header,
      layout,
      columns,
      rows,
      rowNumber: (row) => numbers.at(row),
      ragged,
      units: this.units ?? [],
      passedOver,
      odd,
      likelierHeader,
      nulCells,
      records: Math.max(this.row, 0),
      quoteRow: this.quoteRow || Math.max(openRecord - (this.form.separatorLine ? 1 : 0), 0),
      passing: this.watchers.flatMap((watcher, index) => {
        const kind = watcher.verdict();
        return kind < 0 ? [] : [{ index, kind }];
      }),
    };
  }

  private takeTop(cells: readonly string[]): void {
    this.passedOver++;
    if (this.row < this.form.headerRow || isBlank(cells)) return;
    this.header = cells;
    this.layout = this.form.layoutOf(cells);
    this.namedCells = cells.findLastIndex((cell) => cell.trim() !== '') + 1;
    this.markOf = this.form.plainFrom === undefined ? undefined : cellMarks(cells, this.layout);
    this.dictionaries = this.markOf ? cells.map(() => byteWords()) : [];
    const kept = cells.map((_, index) => this.layout.kept.includes(index));
    this.coded = this.dictionaries.map((words, index) => (kept[index] ? byteColumnBuilder(words) : undefined));
    this.builders = kept.map((isKept, index) => (isKept ? (this.coded[index] ?? wordColumnBuilder()) : undefined));
    this.watchers = Array.from({ length: cells.length + 1 }, passingWords);
    this.oddKind = oddRowTest(cells, this.layout);
  }

  /** Cells without the NUL that fills them up to a fixed width; one that stands inside is left, to be found there. */
  private withoutPadding(cells: readonly string[]): readonly string[] {
    return cells.map((cell) => {
      if (!cell.includes('\0')) return cell;
      this.nulCells++;
      return cell.replace(/^[\0 ]+|[\0 ]+$/g, '');
    });
  }

  /** Blank rows anywhere, rows that are no data, and a row of units directly below a header. */
  private isPassedOver(cells: readonly string[]): boolean {
    if (isBlank(cells)) return true;
    if (this.isUnits(cells)) return true;
    this.lookForHeader(cells);
    const kind = this.oddKind(cells);
    if (kind) this.odd.push({ row: this.row, kind });
    this.belowHeader = kind === 'header again';
    return kind !== undefined;
  }

  private isUnits(cells: readonly string[]): boolean {
    const { belowHeader, form, units } = this;
    if (!belowHeader || form.unitsRow === 'no') return false;
    // What audit.yaml declares of the row below the header holds below a repeated one only for the same row.
    const declared = form.unitsRow === 'yes' && (!units || units.every((unit, index) => unit === cells[index]));
    if (!declared && !isUnitsRow(cells)) return false;
    this.units ??= cells;
    this.belowHeader = false;
    return true;
  }

  /** Where columns are missing, the header may stand lower: titles and groups of columns stand above it. */
  private lookForHeader(cells: readonly string[]): void {
    const isMissing = ({ unsettled }: Layout): boolean => unsettled.some(({ why }) => why === 'missing');
    if (this.likelierHeader > 0 || this.row > this.form.headerRow + rowsLookedAt || !isMissing(this.layout)) return;
    if (!isMissing(this.form.layoutOf(cells))) this.likelierHeader = this.row;
  }

  /**
   * Blank cells may stand beyond the header, or lack below blank headers. But where most rows have them, a row with
   * fewer and a blank last cell has lost a delimiter further left: its cells have moved.
   */
  private fits(cells: readonly string[], header: readonly string[]): boolean {
    const { namedCells, form } = this;
    if (cells.length < namedCells) return false;
    if (cells.length > header.length && !isBlank(cells.slice(header.length))) return false;
    return cells.length >= form.usualCells || cells[namedCells - 1]?.trim() !== '';
  }

  private takeRow(cells: readonly string[], header: readonly string[]): void {
    const fits = this.fits(cells, header);
    for (let index = 0; index < cells.length; index++) {
      const cell = cells[index] as string;
      const builder = fits ? this.builders[index] : undefined;
      if (builder) builder.push(cell);
      else this.watchers[Math.min(index, header.length)]?.push(cell);
      if (this.quoteRow === 0 && swallowedRows(cell, this.form.separator)) this.quoteRow = this.row;
    }
    if (fits) this.keepRow(cells.length);
    else this.ragged.push({ row: this.row, cells: cells.length });
  }

  /** @param given  how many cells the row has: the ones missing below blank headers are blank */
  private keepRow(given: number): void {
    for (const index of this.layout.kept) if (index >= given) this.builders[index]?.push('');
    this.numbers.push(this.row);
    this.rows++;
  }
}
