import type { Flow } from '../records/derived.js';
import type { ResultRow } from '../records/result.js';
import type { EyeGroup } from './sample.js';

/** Where the eyes of a group stand in one family: operated, every reason, analysed. @throws when it does not balance */
export function flowRows(flow: Flow, group: EyeGroup, patient: Int32Array): readonly ResultRow[] {
  const counts = new Array<number>(flow.steps.length).fill(0);
  for (const eye of group.eyes) counts[flow.code[eye] as number] = (counts[flow.code[eye] as number] as number) + 1;
  const operated = group.eyes.length;
  const sum = counts.reduce((all, count) => all + count, 0);
  if (sum !== operated)
    throw new RangeError(`flow of ${flow.family}, ${group.key}: ${operated} operated, ${sum} accounted for`);
  const row = (statistic: string, value: number, patients: number): ResultRow => ({
    measure: `flow:${flow.family}`,
    group: group.key,
    statistic,
    value,
    ci_low: undefined,
    ci_high: undefined,
    n: value,
    eyes: operated,
    patients,
    unit: 'eyes',
    method: 'count',
    note: '',
  });
  const patients = patientsByStep(flow, group, patient);
  return [
    row('operated', operated, patients.all),
    ...flow.steps.map((step, i) => row(step, counts[i] as number, patients.steps[i] as number)),
  ];
}

/** Patients of a group, and of each step: one whose eyes stand at two steps is counted at both. */
function patientsByStep(
  { steps, code }: Flow,
  { eyes }: EyeGroup,
  patient: Int32Array,
): { all: number; steps: readonly number[] } {
  const met = steps.map(() => new Set<number>());
  const all = new Set<number>();
  for (let i = 0; i < eyes.length; i++) {
    const eye = eyes[i] as number;
    all.add(patient[eye] as number);
    met[code[eye] as number]?.add(patient[eye] as number);
  }
  return { all: all.size, steps: met.map(({ size }) => size) };
}
