import { csvLine } from '../../src/format/csv.js';
import { shortest } from '../../src/format/number.js';
import { type ResultRow, resultColumns } from '../../src/records/result.js';
import type { OutputFile } from './replace.js';

/** Every aggregate number at full precision, in the order given; comma and point whatever the spreadsheet. */
export function resultsFile(path: string, rows: readonly ResultRow[]): OutputFile {
  const cell = (value: string | number | undefined): string => (typeof value === 'string' ? value : shortest(value));
  const lines = rows.map((row) =>
    csvLine(
      resultColumns.map((name) => cell(row[name])),
      ',',
    ),
  );
  return { path, bytes: Buffer.from([csvLine(resultColumns, ','), ...lines].join('')) };
}
