import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

const folder = new URL('../../sample-exports/', import.meta.url);

/** Bytes of a committed file of the sample. */
export function committed(name: string): Buffer {
  return readFileSync(new URL(name, folder));
}

/** How each export must be read; the sample's README says the same in words. */
const FORMS: Readonly<Record<string, { encoding: 'utf8' | 'latin1'; delimiter: string; above: number }>> = {
  'theatre-list.csv': { encoding: 'utf8', delimiter: ',', above: 0 },
  'lane-north.csv': { encoding: 'latin1', delimiter: ';', above: 0 },
  'lane-south.csv': { encoding: 'utf8', delimiter: ',', above: 0 },
  'keratometer.csv': { encoding: 'utf8', delimiter: ',', above: 2 },
  'biometry.csv': { encoding: 'utf8', delimiter: ';', above: 0 },
  'endothelium.csv': { encoding: 'utf8', delimiter: ',', above: 0 },
  'wide.csv': { encoding: 'utf8', delimiter: ',', above: 0 },
};

export interface Export {
  readonly header: readonly string[];
  /** The row that a spreadsheet shows under this number. */
  row(number: number): readonly string[];
  /** Row numbers of the data. */
  readonly numbers: readonly number[];
  /** Every cell under a header; the first of two equal ones. */
  cell(number: number, column: string): string;
}

/** A committed export, read by csv-parse and not by the project. */
export function committedExport(file: string): Export {
  const form = FORMS[file];
  if (!form) throw new RangeError(`committedExport: "${file}" is no export of the sample`);
  const text = committed(file).toString(form.encoding);
  const options = { bom: true, delimiter: form.delimiter, relax_column_count: true };
  const lines: string[][] = parse(text, options);
  const header = lines[form.above] ?? [];
  const row = (number: number) => lines[number - 1] ?? [];
  return {
    header,
    row,
    numbers: lines.slice(form.above + 1).map((_, i) => form.above + 2 + i),
    cell: (number, column) => row(number)[header.indexOf(column)] ?? '',
  };
}
