import type { EyeGroup } from '../../src/analysis/sample.js';
import type { Derived } from '../../src/records/derived.js';
import type { ResultRow } from '../../src/records/result.js';
import type { MeasureColumns } from './columns.js';

/** Times and energies of a group whose eyes were operated with several machines are noted as such. */
export function ofMachines(
  rows: readonly ResultRow[],
  { eyes }: EyeGroup,
  { values }: MeasureColumns,
  { strata }: Derived,
): readonly ResultRow[] {
  const machine = strata.find(({ field }) => field === 'machine');
  if (!machine) return rows;
  const used = new Set([...eyes].filter((eye) => !Number.isNaN(values[eye])).map((eye) => machine.code[eye]));
  if (used.size < 2) return rows;
  const noted = (row: ResultRow): string => [...(row.note === '' ? [] : [row.note]), 'several-machines'].join(';');
  return rows.map((row) => (row.unit === 'eyes' ? row : { ...row, note: noted(row) }));
}
