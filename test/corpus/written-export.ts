import { readFileSync } from 'node:fs';
import iconv from 'iconv-lite';
import { stream } from '../../sample-exports/generator/random.js';

/** An export while a test changes how it is written. */
export interface WrittenExport {
  file: string;
  header: string[];
  rows: string[][];
  delimiter: string;
  /** One line end, or several in turn. */
  ends: string[];
  encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  mark: boolean;
  quoteAll: boolean;
  /** Lines before the header and after the rows, as they stand. */
  above: string[];
  below: string[];
  /** Changes the finished text, or the finished bytes. */
  text: ((text: string) => string)[];
  bytes: ((bytes: Uint8Array) => Uint8Array)[];
}

/** Draws for one mutation; the same seed gives the same. */
export interface Draw {
  /** 0 to below 1. */
  share(): number;
  /** 0 to n − 1. */
  below(n: number): number;
  oneOf<T>(values: readonly T[]): T;
  shuffled<T>(values: readonly T[]): T[];
}

export function drawFrom(seed: number): Draw {
  const { uniform: share } = stream(seed, 'mutation');
  const below = (n: number): number => Math.min(n - 1, Math.floor(share() * n));
  return {
    share,
    below,
    oneOf: (values) => values[below(values.length)] as (typeof values)[number],
    shuffled(values) {
      const lots = values.map((value) => [share(), value] as const);
      return lots.sort(([a], [b]) => a - b).map(([, value]) => value);
    },
  };
}

/** The exports of the twelve eyes that were worked by hand: invented, and known to the last digit. */
export const files = ['theatre.csv', 'lane.csv', 'keratometer.csv'] as const;

/** Text of a file of that audit. */
export function handText(name: string): string {
  return readFileSync(new URL(`../hand-audit/${name}`, import.meta.url), 'utf8');
}

export function handExport(file: string): WrittenExport {
  const [header = [], ...rows] = handText(file)
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return {
    file,
    header,
    rows,
    delimiter: ',',
    ends: ['\n'],
    encoding: 'utf-8',
    mark: false,
    quoteAll: false,
    above: [],
    below: [],
    text: [],
    bytes: [],
  };
}

/** The bytes of an export as its program would write them. */
export function bytesOf(written: WrittenExport): Uint8Array {
  const { delimiter, ends, encoding, above, below } = written;
  const needsQuotes = (text: string): boolean => written.quoteAll || /["\r\n]/.test(text) || text.includes(delimiter);
  const cell = (text: string): string => (needsQuotes(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const table = [written.header, ...written.rows].map((cells) => cells.map(cell).join(delimiter));
  const lines = [...above, ...table, ...below];
  const whole = lines.map((line, i) => line + (ends[i % ends.length] ?? '\n')).join('');
  const text = written.text.reduce((sofar, change) => change(sofar), whole);
  // The Western page has no true minus; programs that write it put a dash.
  const sayable = encoding === 'windows-1252' ? text.replaceAll('\u2212', '\u2013') : text;
  const bytes = Uint8Array.from(iconv.encode(sayable, encoding, { addBOM: written.mark }));
  return written.bytes.reduce<Uint8Array>((sofar, change) => change(sofar), bytes);
}

/** What stands in a column, by its header. */
export type Role = 'code' | 'eye' | 'date' | 'power' | 'length' | 'axis' | 'acuity' | 'word';

const roles: Readonly<Record<string, Role>> = {
  Case: 'code',
  Side: 'eye',
  Date: 'date',
  Sph: 'power',
  Cyl: 'power',
  K1: 'power',
  K2: 'power',
  Power: 'power',
  Aim: 'power',
  Predicted: 'power',
  Length: 'length',
  Axis: 'axis',
  A1: 'axis',
  A2: 'axis',
  Unaided: 'acuity',
  Corrected: 'acuity',
};

/** Index of a header, whatever its case and blanks; −1 where it is not there. */
export function columnAt({ header }: WrittenExport, name: string): number {
  return header.findIndex((one) => one.trim().toLowerCase() === name.toLowerCase());
}

function roleOf(header: string): Role {
  const name = Object.keys(roles).find((one) => one.toLowerCase() === header.trim().toLowerCase());
  return (name && roles[name]) || 'word';
}

/** Changes every cell of some roles. @returns whether any cell changed */
export function changeCells(
  written: WrittenExport,
  wanted: readonly Role[],
  change: (cell: string, header: string) => string,
): boolean {
  let changed = false;
  for (const row of written.rows) {
    row.forEach((cell, i) => {
      const header = written.header[i] ?? '';
      if (!wanted.includes(roleOf(header))) return;
      row[i] = change(cell, header);
      changed ||= row[i] !== cell;
    });
  }
  return changed;
}

/** Changes one drawn cell that is a number. @returns whether there is one */
export function changeOne(
  written: WrittenExport,
  draw: Draw,
  wanted: readonly Role[],
  change: (cell: string) => string,
): boolean {
  const places = written.rows.flatMap((row) =>
    row.flatMap((cell, i) =>
      wanted.includes(roleOf(written.header[i] ?? '')) && /^[-+\u2212\u2013]?\d+(?:[.,]\d+)?$/.test(cell)
        ? [[row, i] as const]
        : [],
    ),
  );
  if (places.length === 0) return false;
  const [row, i] = draw.oneOf(places);
  const was = row[i] as string;
  row[i] = change(was);
  return row[i] !== was;
}
