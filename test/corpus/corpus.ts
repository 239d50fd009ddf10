import { integersOf, numbersOf } from '../../src/columns/table.js';
import type { Kind } from '../../src/records/canonical.js';
import type { Finding } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { ColumnForm, SourceForm } from '../findings/plan.js';

/** One export with one peculiarity. Everything in it is invented. */
export interface Peculiar {
  name: string;
  /** What is peculiar, in a sentence. */
  peculiarity: string;
  /** The bytes of the file; text stands for UTF-8. */
  bytes: string | Uint8Array;
  /** What audit.yaml says of the file beside the usual columns; `columns` adds to those or replaces them. */
  source?: Partial<Omit<SourceForm, 'columns'>>;
  columns?: Readonly<Record<string, ColumnForm | undefined>>;
  plan?: Partial<Plan>;
  /** Declared where letters behind an acuity count. */
  lettersPerLine?: number;
  /** Visits by their labels, where rows have no dates. */
  visits?: readonly string[];
  /** What must be read; the four usual eyes where nothing is said. */
  reads?: Readonly<Record<string, string>> | 'nothing';
  /** Every finding that must be raised, and no other. */
  finds?: readonly (Partial<Finding> & Pick<Finding, 'rule'>)[];
  /** Where the audit stops: the lines of audit.yaml that are offered, one of which settles it. */
  lines?: readonly string[];
}

/** Header and rows of the export that every case writes in its own way. */
export const header = ['ID', 'Eye', 'Date', 'Sph', 'Cyl', 'Axis', 'VA'] as const;
export const rows: readonly (readonly string[])[] = [
  ['A1', 'R', '2025-02-20', '-1.25', '-0.50', '90', '6/9'],
  ['A1', 'L', '2025-02-21', '+0.50', '-0.75', '5', '6/6'],
  ['A2', 'R', '2025-02-24', '-0.25', '-1.00', '175', '6/12'],
  ['A3', 'L', '2025-02-25', '0.00', '-0.25', '100', '6/7.5'],
];

/**
 * What the four rows say: days from an operation on 2025-01-10, plus cylinder, logMAR.
 *
 * By hand: 10 January to 20 February is 41 days; −1.25 −0.50 × 90 is −1.75 +0.50 × 180; log10(9/6) = 0.1761,
 * log10(12/6) = 0.3010, log10(7.5/6) = 0.0969.
 */
export const usual: Readonly<Record<string, string>> = {
  'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.1761',
  'A1 left': 'day 42: -0.25 +0.75 × 95, corrected 0',
  'A2 right': 'day 45: -1.25 +1 × 85, corrected 0.301',
  'A3 left': 'day 46: -0.25 +0.25 × 10, corrected 0.0969',
};

/** The four rows as text. @param edit  changes single cells; row −1 is the header */
export function written(
  separator = ',',
  edit: (cell: string, row: number, column: number) => string = (cell) => cell,
  end = '\n',
): string {
  const lines = [header, ...rows].map((cells, at) => cells.map((cell, column) => edit(cell, at - 1, column)));
  return lines.map((cells) => cells.join(separator) + end).join('');
}

/** The four rows with single cells changed: 'row column' → text, rows counted as a spreadsheet shows them. */
export function withCells(changes: Readonly<Record<string, string>>, separator = ','): string {
  return written(separator, (cell, row, column) => changes[`${row + 2} ${header[column]}`] ?? cell);
}

/** The four rows as an office program with a decimal comma writes them. */
export function withCommas(separator = ';', changes: Readonly<Record<string, string>> = {}): string {
  return written(separator, (cell, row, column) => {
    const own = changes[`${row + 2} ${header[column]}`];
    return own ?? (column === 2 ? cell : cell.replace('.', ','));
  });
}

/** The usual eyes with some of them changed, or taken out. */
export function usualBut(changes: Readonly<Record<string, string | undefined>>): Readonly<Record<string, string>> {
  const all = Object.entries({ ...usual, ...changes });
  return Object.fromEntries(all.filter((entry): entry is [string, string] => entry[1] !== undefined));
}

/** Operations of the same eyes, on one day. */
export const surgeryList = 'Case,Side,Day\nA1,R,2025-01-10\nA1,L,2025-01-10\nA2,R,2025-01-10\nA3,L,2025-01-10\n';

/** A number as it is compared here: four decimals are finer than any export writes. */
const short = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);

/** The part of the canonical tables that is compared. */
interface Tables {
  patients: readonly string[];
  eyes: Parameters<typeof integersOf>[0];
  measurements: Readonly<Record<Kind, Parameters<typeof integersOf>[0]>>;
}

/** What canonical tables say of every operated eye, in one line an eye. */
export function readingOf(tables: Tables): Readonly<Record<string, string>> {
  const patient = integersOf(tables.eyes, 'patient');
  const side = integersOf(tables.eyes, 'laterality');
  const found = new Map<string, Map<string, string[]>>();
  for (const [kind, say] of Object.entries(sayings) as [Kind, Saying][]) {
    const table = tables.measurements[kind];
    const [eyes, days] = [integersOf(table, 'eye'), integersOf(table, 'day')];
    for (let row = 0; row < eyes.length; row++) {
      const eye = eyes[row] as number;
      const said = say((name) => numbersOf(table, name)[row] as number);
      if (eye < 0 || said === undefined) continue;
      const name = `${tables.patients[patient[eye] as number]} ${side[eye] === 0 ? 'right' : 'left'}`;
      const day = (days[row] as number) < -1e6 ? 'labelled' : `day ${days[row]}`;
      const ofEye = found.get(name) ?? new Map<string, string[]>();
      found.set(name, ofEye.set(day, [...(ofEye.get(day) ?? []), said]));
    }
  }
  const line = (days: Map<string, string[]>): string =>
    [...days].map(([day, parts]) => `${day}: ${parts.join(', ')}`).join('; ');
  return Object.fromEntries([...found].map(([name, days]) => [name, line(days)]));
}

type Saying = (of: (column: string) => number) => string | undefined;

const acuity =
  (name: string): Saying =>
  (of) => {
    const value = of('logMAR');
    const code = of('lowVision');
    if (Number.isNaN(value)) return undefined;
    return `${name} ${short(value)}${code > 0 ? ` (word ${code})` : ''}`;
  };

const sayings: Readonly<Partial<Record<Kind, Saying>>> = {
  refractions: (of) => {
    const [sphere, cylinder, axis] = ['sphere', 'cylinder', 'axis'].map((name) => of(name)) as [number, number, number];
    if (Number.isNaN(sphere) && Number.isNaN(cylinder)) return undefined;
    return `${short(sphere)} +${short(cylinder)} × ${short(axis)}`;
  },
  uncorrected: acuity('uncorrected'),
  corrected: acuity('corrected'),
  keratometries: (of) => `K ${short(of('flat'))} / ${short(of('steep'))} @ ${short(of('steepAxis'))}`,
};
