import type { ColumnTable } from 'arquero';
import { ingest } from '../../pipeline/1-ingest.js';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { concatFindings, findingAt } from '../../src/findings/builder.js';
import type { CanonicalTables, Kind } from '../../src/records/canonical.js';
import type { Finding } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';
import { planOf, type SourceForm } from '../findings/plan.js';

export interface Harmonised {
  tables: CanonicalTables;
  raw: readonly RawTable[];
  findings: readonly Finding[];
  /** The rows of a kind, each as the named columns; 'row' is the row a spreadsheet shows. */
  rows(kind: Kind, ...columns: readonly string[]): readonly (readonly number[])[];
  /** A field of every eye, by name where it has names. */
  eyes(field: string): readonly unknown[];
  /** Books of a file: used, and set aside by reason. */
  books(file: string): { used: number; setAside: Readonly<Record<string, number>> };
}

const cells = (table: ColumnTable, column: string, i: number): number => Number(table.get(column, i));

/** Files in memory, brought through ingest and harmonise. */
export async function harmonised(
  files: Readonly<Record<string, readonly string[]>>,
  sources: readonly SourceForm[],
  more: Partial<Plan> = {},
): Promise<Harmonised> {
  const plan = planOf(sources, more);
  const texts = Object.fromEntries(Object.entries(files).map(([file, lines]) => [file, lines.join('\n')]));
  const { raw, findings: ofReading } = await ingest(plan, memoryIo(texts), () => {});
  const { tables, findings: own } = harmonise(raw, plan);
  const all = concatFindings([ofReading, own]);
  return {
    tables,
    raw,
    findings: Array.from({ length: all.length }, (_, i) => findingAt(all, i)),
    rows(kind, ...columns) {
      const table = tables.measurements[kind];
      const shown = (column: string, i: number): number =>
        column === 'row'
          ? (raw[cells(table, 'source', i)]?.rowNumber(cells(table, 'row', i)) ?? 0)
          : cells(table, column, i);
      return Array.from({ length: table.numRows() }, (_, i) => columns.map((column) => shown(column, i)));
    },
    eyes(field) {
      const column = tables.eyes.column(field) as { at(eye: number): unknown } | undefined;
      return Array.from({ length: tables.eyes.numRows() }, (_, eye) => column?.at(eye));
    },
    books(file) {
      const found = tables.books[tables.files.indexOf(file)];
      if (!found) throw new RangeError(`harmonised: no file ${file}`);
      return { used: found.used, setAside: found.setAside };
    },
  };
}

/** A theatre list of right eyes, each of a patient of its own, all operated on 2025-03-01. */
export const theatreOf = (patients: readonly string[]): readonly string[] => [
  'ID,Eye,Date',
  ...patients.map((patient) => `${patient},R,2025-03-01`),
];

export const theatre: SourceForm = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' },
};
