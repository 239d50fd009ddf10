import type { Finding } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import { type Audited, allFindings, audited } from '../findings/audited.js';
import { type ColumnForm, planOf, type SourceForm } from '../findings/plan.js';

/** The only theatre list of these tests: eight right eyes, all operated on one day. */
const theatre: SourceForm = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' },
};

const operations = ['ID,Eye,Date', ...Array.from({ length: 8 }, (_, i) => `A${i + 1},R,2025-03-01`)].join('\n');

/** Day 40 and day −10 of these operations. */
export const after = '2025-04-10';
export const before = '2025-02-19';

/** Files of a few rows are unlike those of a clinic: what is said of whole files is no matter to most tests. */
const quiet = new Set([
  'surgery-without-exam',
  'outcome-none',
  'column-blank',
  'cylinder-notation-file',
  'refraction-grid-file',
]);

/**
 * A lane file with columns ID, Eye, Date and those given, brought through the first three stages beside the theatre
 * list. Eyes that a test does not examine are no matter here. `told` leaves out what is said of whole files.
 */
export async function lane(
  header: string,
  rows: readonly string[],
  columns: Readonly<Record<string, ColumnForm>>,
  more: Partial<Plan> = {},
): Promise<Audited & { told: readonly Finding[] }> {
  const plan = planOf(
    [theatre, { file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye', exam_date: 'Date', ...columns } }],
    more,
  );
  const text = [`ID,Eye,Date,${header}`, ...rows].join('\n');
  const all = await audited({ 'theatre.csv': operations, 'lane.csv': text }, plan);
  return { ...all, told: allFindings(all.findings).filter(({ rule }) => !quiet.has(rule)) };
}

/** A theatre list with more columns of the eye; that nobody was examined is no matter to it. */
export async function list(
  header: string,
  rows: readonly string[],
  columns: Readonly<Record<string, ColumnForm>>,
  more: Partial<Plan> = {},
): Promise<Audited & { told: readonly Finding[] }> {
  const plan = planOf([{ ...theatre, columns: { ...theatre.columns, ...columns } }], more);
  const all = await audited({ 'theatre.csv': [`ID,Eye,Date,${header}`, ...rows].join('\n') }, plan);
  return { ...all, told: allFindings(all.findings).filter(({ rule }) => rule !== 'outcome-none') };
}
