import { csvLine } from '../../src/format/csv.js';
import { shortest } from '../../src/format/number.js';
import { type ResultRow, resultColumns } from '../../src/records/result.js';
import { type OutputFile, textFile } from './replace.js';

/** Every aggregate number at full precision, in the order given; comma and point whatever the spreadsheet. */
export function resultsFile(path: string, rows: readonly ResultRow[]): OutputFile {
  return textFile(path, [csvLine(resultColumns, ','), ...rows.map(resultLine)].join(''));
}

/** One row as it stands in results.csv, its line break included. */
export function resultLine(row: ResultRow): string {
  const cell = (value: string | number | undefined): string => (typeof value === 'string' ? value : shortest(value));
  return csvLine(
    resultColumns.map((name) => cell(row[name])),
    ',',
  );
}
