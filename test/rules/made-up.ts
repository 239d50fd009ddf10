import type { Finding } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import { type Audited, allFindings, audited } from '../findings/audited.js';
import { type ColumnForm, planOf, type SourceForm } from '../findings/plan.js';

type Cell = string | number | undefined;

/** An operated eye: its key, and what the theatre list says of it by our names. Operated on 1 March 2025 unless said. */
export interface MadeEye {
  patient: string;
  eye?: 'R' | 'L';
  surgery_date?: string;
  [field: string]: Cell;
}

/** An examination: days from surgery, and what it found by our names; in lane.csv unless another file is said. */
export interface MadeExam {
  patient: string;
  eye?: 'R' | 'L';
  days?: number;
  file?: string;
  [field: string]: Cell;
}

/** Columns whose cells need more than their header. */
const forms: Readonly<Record<string, Partial<Exclude<ColumnForm, string>>>> = {
  udva: { numbers: 'logmar' },
  cdva: { numbers: 'logmar' },
  acd: { from: 'front' },
  predicted_cylinder: { plane: 'corneal', notation: 'plus' },
};

type Row = Readonly<Record<string, Cell>>;

/** A file whose headers are our names, and the source that reads it. */
function made(file: string, holds: 'surgery' | 'exam', rows: readonly Row[]): { source: SourceForm; text: string } {
  const fields = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const columns = Object.fromEntries(fields.map((field) => [field, { column: field, ...forms[field] }]));
  const lines = rows.map((row) => fields.map((field) => row[field] ?? '').join(';'));
  return { source: { file, holds, columns }, text: [fields.join(';'), ...lines].join('\n') };
}

export interface Clinic extends Audited {
  plan: Plan;
  /** Findings of one rule; all of them without. */
  told(rule?: string): readonly Finding[];
}

/** A made-up clinic, brought through the first three stages. */
export async function clinic(
  { eyes, exams = [] }: { eyes: readonly MadeEye[]; exams?: readonly MadeExam[] },
  more: Partial<Plan> = {},
): Promise<Clinic> {
  const theatre = made(
    'theatre.csv',
    'surgery',
    eyes.map((eye) => ({ eye: 'R', surgery_date: '2025-03-01', ...eye })),
  );
  const names = [...new Set(exams.map(({ file = 'lane.csv' }) => file))];
  const lanes = names.map((name) => {
    const own = exams.filter(({ file = 'lane.csv' }) => file === name);
    return made(
      name,
      'exam',
      own.map(({ file: _, ...exam }) => ({ eye: 'R', ...exam })),
    );
  });
  const plan = planOf(
    [theatre, ...lanes].map(({ source }) => source),
    more,
  );
  const files = Object.fromEntries([theatre, ...lanes].map(({ source, text }) => [String(source.file), text]));
  const all = await audited(files, plan);
  const findings = allFindings(all.findings);
  return { ...all, plan, told: (rule) => findings.filter((one) => rule === undefined || one.rule === rule) };
}

/** Limits that an audit declares itself. */
export function declared(limits: Readonly<Record<string, readonly [number, number]>>): Pick<Plan, 'quality'> {
  const entries = Object.entries(limits).map(([name, usual]) => [name, { possible: undefined, usual, reason: 'x' }]);
  return { quality: { limits: Object.fromEntries(entries), off: [], answers: [] } };
}
