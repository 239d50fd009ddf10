import type { Kind } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { type Assembly, assembleVisits } from '../../src/visits/assemble.js';
import { audited } from '../findings/audited.js';
import { planOf, type SourceForm } from '../findings/plan.js';

const columns = {
  patient: 'ID',
  eye: 'Eye',
  days: 'Day',
  visit: 'Visit',
  sphere: 'Sph',
  cylinder: 'Cyl',
  axis: 'Ax',
  cdva: { column: 'CDVA', numbers: 'logmar' },
  k_flat: 'Flat',
  k_steep: 'Steep',
} as const;

const header = 'ID,Eye,Day,Visit,Sph,Cyl,Ax,CDVA,Flat,Steep';

const theatre: SourceForm = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date', procedure: 'What' },
};

/** An examination of the right eye of A1: day from surgery or '', then what was measured. */
export function exam(
  day: number | '',
  seen: { visit?: string; sph?: string; cyl?: string; cdva?: string; k?: string },
): string {
  const { visit = '', sph = '', cyl = sph === '' ? '' : '-0.50', cdva = '', k = ',' } = seen;
  return `A1,R,${day},${visit},${sph},${cyl},${cyl === '' ? '' : '90'},${cdva},${k}`;
}

/** A plan's follow-up with these visits, the first of them the outcome unless said otherwise. */
export function followUp(more: Partial<Plan['follow_up']>): Pick<Plan, 'follow_up'> {
  const { follow_up } = planOf([]);
  const visits = more.visits ?? follow_up.visits;
  return { follow_up: { ...follow_up, outcome: visits.slice(0, 1).map(({ name }) => name), ...more } };
}

export interface Examined {
  assembly: Assembly;
  /** Row of lane.csv as a spreadsheet shows it, or 'second' and its row; undefined where none was chosen. */
  chosen(kind: Kind, at?: string): number | string | undefined;
}

/**
 * The right eye of A1, operated on 2025-03-01, with these examinations.
 *
 * @param rows        of lane.csv; the first is row 2
 * @param operations  further rows of the theatre list
 * @param second      rows of a second lane's file, of another device
 */
export async function examined(
  rows: readonly string[],
  more: Partial<Plan> = {},
  { operations = [], second }: { operations?: readonly string[]; second?: readonly string[] } = {},
): Promise<Examined> {
  const lane: SourceForm = { file: 'lane.csv', columns };
  const sources = [theatre, lane, ...(second ? [{ ...lane, file: 'second.csv' }] : [])];
  const plan = planOf(sources, more);
  const files = {
    'theatre.csv': ['ID,Eye,Date,What', 'A1,R,2025-03-01,lens', ...operations].join('\n'),
    'lane.csv': [header, ...rows].join('\n'),
    'second.csv': [header, ...(second ?? [])].join('\n'),
  };
  const { tables, raw } = await audited(files, plan);
  const assembly = assembleVisits(tables, plan);
  return {
    assembly,
    chosen(kind, at = 'outcome') {
      const rowsAt =
        { before: assembly.before, outcome: assembly.outcome }[at] ??
        assembly.visits.find(({ rule }) => rule.name === at)?.rows;
      const row = rowsAt?.[kind][0] ?? -1;
      if (row < 0) return undefined;
      const table = tables.measurements[kind];
      const file = raw[table.get('source', row) as number];
      const number = file?.rowNumber(table.get('row', row) as number);
      return file?.file === 'second.csv' ? `second ${number}` : number;
    },
  };
}
