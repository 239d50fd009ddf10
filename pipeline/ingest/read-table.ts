import { type WordColumn, type WordColumnBuilder, wordColumnBuilder } from '../../src/columns/word-column.js';
import { type PassingWords, passingWords } from './identifier-gate.js';
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
  /** Header, rows above it, a units row, blank rows. */
  passedOver: number;
  /** All rows of the file. */
  records: number;
  /** Row at which a quoted cell swallows the rows below it; 0 where none does. */
  quoteRow: number;
  /** Header index and `identifierKinds` index of every column that is not kept and whose cells identify a person. */
  passing: readonly { index: number; kind: number }[];
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/** Builds a table from records as they come. */
export class TableReader {
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
  private belowHeader = false;

  constructor(private readonly form: TableForm) {
    this.row = form.separatorLine ? -1 : 0;
  }

  /** One record of the file, in order. */
  take(cells: readonly string[]): void {
    this.row++;
    if (this.row === 0) return;
    if (this.header === undefined) this.takeTop(cells);
    else if (this.isPassedOver(cells)) this.passedOver++;
    else this.takeRow(cells, this.header);
  }

  /** @param openRecord  the record, counted from 1, in which a quoted cell was left open; 0 where none was */
  finish(openRecord: number): TableRead {
    const { header, layout, rows, ragged, passedOver, numbers } = this;
    const columns = layout.kept.map((index) => (this.builders[index] as WordColumnBuilder).finish());
    return {
      header,
      layout,
      columns,
      rows,
      rowNumber: (row) => numbers.at(row),
      ragged,
      passedOver,
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
    this.builders = cells.map((_, index) => (this.layout.kept.includes(index) ? wordColumnBuilder() : undefined));
    this.watchers = Array.from({ length: cells.length + 1 }, passingWords);
  }

  /** Blank rows anywhere, and a row of units directly below the header. */
  private isPassedOver(cells: readonly string[]): boolean {
    if (isBlank(cells)) return true;
    const first = !this.belowHeader;
    this.belowHeader = true;
    if (!first || this.form.unitsRow === 'no') return false;
    return this.form.unitsRow === 'yes' || isUnitsRow(cells);
  }

  private takeRow(cells: readonly string[], header: readonly string[]): void {
    const fits =
      cells.length >= this.namedCells && (cells.length <= header.length || isBlank(cells.slice(header.length)));
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
