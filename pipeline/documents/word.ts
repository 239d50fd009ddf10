import type { Paragraph, Table, TableCell } from 'docx';
import type { TableRow, TypesetTable } from '../../src/records/report.js';
import { headTexts, tableLayout } from '../../src/tables/render/layout.js';
import type { Words } from '../../src/words/index.js';
import { sameZip } from './same-zip.js';

type Docx = typeof import('docx');

/** Half points: 9 pt in tables, 8 pt below them. */
const sizes = { cell: 18, note: 16 };
/** Twentieths of a point: A4 with margins of 20 mm. */
const sheet = { short: 11906, long: 16838, margin: 1134 };
/** Eighths of a point: the rules above and below a table, and the one under its head. */
const rules = { outer: 12, inner: 6 };

/**
 * Tables as one Word document, each on a page of its own: real tables, three rules, the head repeated on every page,
 * footnotes below. The same tables give the same bytes.
 *
 * @param font  of all text, as the reader's machine names it
 */
export async function wordTables(tables: readonly TypesetTable[], font: string, words: Words): Promise<Uint8Array> {
  const docx = await import('docx');
  const document = new docx.Document({
    creator: 'halfdiopter',
    lastModifiedBy: 'halfdiopter',
    title: tables.map(({ number, title }) => words.tables.caption(number, title)).join('; '),
    styles: { default: { document: { run: { font, size: sizes.cell } } } },
    sections: tables.map((table) => ({
      properties: { page: pageOf(docx, table) },
      children: [caption(docx, table, words), wordTable(docx, table, words), ...notes(docx, table)],
    })),
  });
  return sameZip(await docx.Packer.toBuffer(document));
}

function pageOf({ PageOrientation }: Docx, table: TypesetTable): object {
  const { margin } = sheet;
  const orientation = tableLayout(table).isWide ? PageOrientation.LANDSCAPE : PageOrientation.PORTRAIT;
  return {
    size: { width: sheet.short, height: sheet.long, orientation },
    margin: { top: margin, right: margin, bottom: margin, left: margin },
  };
}

function caption({ Paragraph, TextRun }: Docx, { number, title }: TypesetTable, words: Words): Paragraph {
  return new Paragraph({
    keepNext: true,
    spacing: { after: 80 },
    children: [new TextRun({ text: words.tables.caption(number, title), bold: true })],
  });
}

function notes({ Paragraph, TextRun }: Docx, { footnotes }: TypesetTable): readonly Paragraph[] {
  return footnotes.map(
    (text) => new Paragraph({ spacing: { before: 40 }, children: [new TextRun({ text, size: sizes.note })] }),
  );
}

function wordTable(docx: Docx, table: TypesetTable, words: Words): Table {
  const { Table, TableRow: Row, TableLayoutType, WidthType } = docx;
  const { shares, isWide } = tableLayout(table);
  const room = (isWide ? sheet.long : sheet.short) - 2 * sheet.margin;
  const columnWidths = shares.map((share) => Math.floor(share * room));
  const head = headTexts(table, words).map((text, column) => {
    return cellOf(docx, { text, column, width: columnWidths[column] ?? 0, isHead: true });
  });
  return new Table({
    columnWidths,
    width: { size: columnWidths.reduce((sum, width) => sum + width, 0), type: WidthType.DXA },
    layout: TableLayoutType.FIXED,
    borders: threeRules(docx),
    rows: [
      new Row({ tableHeader: true, cantSplit: true, children: head }),
      ...table.rows.map((row) => new Row({ cantSplit: true, children: rowCells(docx, row, columnWidths) })),
    ],
  });
}

function threeRules({ BorderStyle }: Docx): object {
  const none = { style: BorderStyle.NONE, size: 0 };
  const rule = { style: BorderStyle.SINGLE, size: rules.outer, color: '000000' };
  return { top: rule, bottom: rule, left: none, right: none, insideHorizontal: none, insideVertical: none };
}

function rowCells(docx: Docx, { label, indent, cells }: TableRow, widths: readonly number[]): readonly TableCell[] {
  const width = widths[0] ?? 0;
  if (cells.length === 0) return [cellOf(docx, { text: label, column: 0, width, isBlock: true, span: widths.length })];
  return [
    cellOf(docx, { text: label, column: 0, width, indent }),
    ...cells.map(({ text }, at) => cellOf(docx, { text, column: at + 1, width: widths[at + 1] ?? 0 })),
  ];
}

interface CellForm {
  text: string;
  column: number;
  width: number;
  span?: number;
  indent?: 0 | 1;
  isHead?: boolean;
  isBlock?: boolean;
}

function cellOf(docx: Docx, { text, column, width, span = 1, indent = 0, isHead, isBlock }: CellForm): TableCell {
  const { AlignmentType, BorderStyle, Paragraph, TableCell: Cell, TextRun, VerticalAlign, WidthType } = docx;
  const underHead = { bottom: { style: BorderStyle.SINGLE, size: rules.inner, color: '000000' } };
  return new Cell({
    ...(span > 1 ? { columnSpan: span } : { width: { size: width, type: WidthType.DXA } }),
    ...(isHead ? { borders: underHead, verticalAlign: VerticalAlign.BOTTOM } : {}),
    margins: { top: 20, bottom: 20, left: 60, right: 60 },
    children: [
      new Paragraph({
        alignment: column === 0 ? AlignmentType.LEFT : AlignmentType.RIGHT,
        keepNext: isHead === true || isBlock === true,
        indent: { left: indent * 200 },
        children: [new TextRun({ text, bold: isBlock === true })],
      }),
    ],
  });
}
