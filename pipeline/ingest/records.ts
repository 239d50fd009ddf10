import { pipeline } from 'node:stream/promises';
import { CsvError, parse } from 'csv-parse';
import { longestRecord } from './plain-check.js';

/**
 * Splits text into records, quoted line breaks and all, and hands them over one by one.
 *
 * A quotation mark inside an unquoted cell stays as it is. A blank line is a record of one blank cell, so that the
 * number of records is the number of rows that a spreadsheet shows.
 *
 * @param text       bytes in UTF-8, or decoded text, in pieces of any size
 * @param separator  the character between cells
 * @param take       given each record; its cells are as written
 * @returns how many records there are, and in which, counted from 1, a quoted cell was left open; 0 where none was
 */
export async function readRecords(
  text: AsyncIterable<Uint8Array | string>,
  separator: string,
  take: (cells: string[]) => void,
): Promise<{ records: number; openRecord: number }> {
  const parser = parse({
    bom: true,
    delimiter: separator,
    max_record_size: longestRecord,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
  });
  parser.on('data', take);
  try {
    await pipeline(text, parser);
    return { records: parser.info.records, openRecord: 0 };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    if (error.code === 'CSV_QUOTE_NOT_CLOSED' || error.code === 'CSV_MAX_RECORD_SIZE') {
      return { records: parser.info.records, openRecord: parser.info.records + 1 };
    }
    // The parser's own error carries the cells of a patient: only its code may leave.
    throw new Error(`readRecords: the parser refused a record (${error.code})`);
  }
}

/**
 * Whether a cell swallowed the rows below it: it opens with a quotation mark, runs over a line break, and meets the
 * next cell's opening mark before one of its own.
 */
export function swallowedRows(cell: string, separator: string): boolean {
  if (!cell.startsWith('"') || !/[\r\n]/.test(cell)) return false;
  return cell.includes(`${separator}"`) || /[\r\n]"/.test(cell);
}
