import { type WordColumn, wordColumnBuilder } from '../columns/word-column.js';
import { fieldNamed } from '../plan/fields.js';
import type { RawTable } from '../records/raw-table.js';

/** A new text for one cell. */
export interface Correction {
  /** Index into the raw tables. */
  source: number;
  /** Row of the table, and index of its header. */
  row: number;
  header: number;
  field: string;
  value: string;
}

const markedTypes: readonly (string | undefined)[] = ['number', 'refraction', 'acuity', 'clock-or-degrees'];

/** A decimal as a spreadsheet of another country types it. */
const decimal = /\d[.,]\d|^[+\-−]?[.,]\d/;

/**
 * A corrected value in the decimal mark of its file: the list may have been filled in on another computer.
 *
 * @param mark  of the file; 'none' where no number in it has decimals yet: then a point
 */
function inMark({ field, value }: Correction, mark: 'point' | 'comma' | 'none'): string {
  if (!markedTypes.includes(fieldNamed(field)?.type) || !decimal.test(value)) return value;
  return mark === 'comma' ? value.replaceAll('.', ',') : value.replaceAll(',', '.');
}

/** A column with other words in some rows; words that no row has any more are gone. */
function withWords(column: WordColumn, changes: ReadonlyMap<number, string>): WordColumn {
  const builder = wordColumnBuilder();
  for (let row = 0; row < column.length; row++) builder.push(changes.get(row) ?? column.at(row));
  return builder.finish();
}

function correctedTable(table: RawTable, corrections: readonly Correction[]): RawTable {
  const changes = new Map<number, Map<number, string>>();
  for (const correction of corrections) {
    const rows = changes.get(correction.header) ?? new Map<number, string>();
    rows.set(correction.row, inMark(correction, table.read.decimal));
    changes.set(correction.header, rows);
  }
  const columns = table.columns.map((column, at) => {
    const rows = changes.get(table.kept[at] as number);
    return rows ? withWords(column, rows) : column;
  });
  const hasDecimals = corrections.some((one) => inMark(one, 'point') !== inMark(one, 'comma'));
  const mark = table.read.decimal === 'none' && hasDecimals ? 'point' : table.read.decimal;
  const formerly = (row: number, header: number): string | undefined =>
    changes.get(header)?.has(row)
      ? (table.formerly?.(row, header) ?? table.columns[table.kept.indexOf(header)]?.at(row))
      : table.formerly?.(row, header);
  return { ...table, columns, read: { ...table.read, decimal: mark }, formerly };
}

/**
 * The same files with other texts in some cells. What stood there is kept in `formerly`, for the trace.
 *
 * @example correctedTables(raw, [{ source: 0, row: 61, header: 3, field: 'sphere', value: '+0,75' }])
 */
export function correctedTables(raw: readonly RawTable[], corrections: readonly Correction[]): readonly RawTable[] {
  return raw.map((table, source) => {
    const own = corrections.filter((one) => one.source === source);
    return own.length > 0 ? correctedTable(table, own) : table;
  });
}
