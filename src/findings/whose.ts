import { integersOf } from '../columns/table.js';
import { type CanonicalTables, noDay } from '../records/canonical.js';
import type { Finding } from '../records/finding.js';
import type { RawTable } from '../records/raw-table.js';
import { queryName } from './query-name.js';
import { rowKeys } from './row-keys.js';
import type { TellingContext } from './telling.js';

type Context = Pick<TellingContext, 'raw' | 'plan'>;

/** Whose eye a finding is about; texts are '' where that is not known. */
export interface Whose {
  patient: string;
  eye: 'right' | 'left' | '';
}

/** Index of the row that a spreadsheet shows under this number; undefined where it is not in the table. */
export function rowAt(table: RawTable, number: number): number | undefined {
  let low = 0;
  let high = table.rows - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const found = table.rowNumber(middle);
    if (found === number) return middle;
    if (found < number) low = middle + 1;
    else high = middle - 1;
  }
  return undefined;
}

/** From the eye where there is one, else from the cells of the row itself. */
export function whoseFinder(tables: CanonicalTables, { raw, plan }: Context): (finding: Finding) => Whose {
  const patient = integersOf(tables.eyes, 'patient');
  const laterality = integersOf(tables.eyes, 'laterality');
  const readers = raw.map((table) => (plan.sources[table.source]?.blocks ?? []).map((block) => rowKeys(table, block)));
  return ({ eye, source, row }) => {
    if (eye >= 0) {
      const code = tables.patients[patient[eye] as number] ?? '';
      return { patient: code, eye: laterality[eye] === 0 ? 'right' : 'left' };
    }
    const table = raw[source];
    const at = table && rowAt(table, row);
    const keys =
      at === undefined ? [] : (readers[source] ?? []).map((of) => ({ patient: of.patient(at), eye: of.eye(at) }));
    const side = keys[0]?.eye;
    // In a file with a block for each side, the row alone does not tell which is meant.
    const sure = keys.every((one) => one.eye === side);
    return { patient: keys[0]?.patient ?? '', eye: sure && (side === 'right' || side === 'left') ? side : '' };
  };
}

/**
 * The name of a query: a hash of its rule, patient, eye, day, field and value, so that the same doubt keeps it from run
 * to run. A doubt about no patient is named by its place too, or all rows without a code would be one.
 */
export function nameOf(finding: Finding, { patient, eye }: Whose, { raw }: Pick<Context, 'raw'>): string {
  const { rule, source, row, column = '', field = '', written = '', day } = finding;
  const parts = [rule, patient, eye, day === noDay ? '' : String(day), field, written];
  const place = [raw[source]?.file ?? '', String(row), column];
  return queryName(patient === '' ? [...parts, ...place] : parts);
}
