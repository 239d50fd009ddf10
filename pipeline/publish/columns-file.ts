import { locateColumn } from '../../src/findings/header.js';
import type { ColumnPlan, Plan } from '../../src/records/plan.js';
import { keptColumn, type RawTable } from '../../src/records/raw-table.js';
import { type Spreadsheet, spreadsheetFile } from './csv-file.js';
import type { OutputFile } from './replace.js';

const header = ['file', 'position', 'column', 'read_as', 'kind_of_row', 'rows', 'blank', 'different_values'];

/** Every column of every file: what it is read as, how full it is; columns that are not read hold no cell of a person. */
export function columnsFile(path: string, raw: readonly RawTable[], plan: Plan, spreadsheet: Spreadsheet): OutputFile {
  return spreadsheetFile(
    path,
    header,
    raw.flatMap((table) => tableRows(table, plan)),
    spreadsheet,
  );
}

/** How many columns of a file are read, and how many it has. */
export function placedColumns(raw: readonly RawTable[]): { placed: number; all: number } {
  const sum = (of: (table: RawTable) => number): number => raw.reduce((total, table) => total + of(table), 0);
  return { placed: sum(({ kept }) => kept.length), all: sum(({ header: all }) => all.length) };
}

function tableRows(table: RawTable, plan: Plan): readonly (readonly string[])[] {
  return table.header.map((name, index) => {
    const uses = usesOf(table, index, plan);
    const shared = [table.label, String(index + 1), name];
    if (!table.kept.includes(index)) return [...shared, '', '', String(table.rows), '', ''];
    const { codes, words } = keptColumn(table, index);
    const blank = blankCells(words, codes);
    const read = uses.map(({ column }) => column.field).join(', ');
    const kinds = [...new Set(uses.map(({ holds }) => holds))].join(', ');
    return [...shared, read, kinds, String(table.rows), String(blank), String(words.length - 1)];
  });
}

function usesOf(table: RawTable, index: number, plan: Plan): readonly { column: ColumnPlan; holds: string }[] {
  const blocks = plan.sources[table.source]?.blocks ?? [];
  return blocks.flatMap(({ holds, columns, covariates }) =>
    [...columns, ...covariates]
      .filter((column) => locateColumn(table.header, column).index === index)
      .map((column) => ({ column, holds })),
  );
}

/** Cells without a sign in them; several words may be blank, such as one of spaces. */
function blankCells(words: readonly string[], codes: ArrayLike<number>): number {
  const blank = words.map((word) => word.trim() === '');
  let count = 0;
  for (let row = 0; row < codes.length; row++) if (blank[codes[row] as number]) count += 1;
  return count;
}
