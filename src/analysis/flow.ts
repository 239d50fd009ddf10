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
  const patientsWhere = (holds: (eye: number) => boolean): number =>
    new Set([...group.eyes].filter(holds).map((eye) => patient[eye])).size;
  return [
    row(
      'operated',
      operated,
      patientsWhere(() => true),
    ),
    ...flow.steps.map((step, i) =>
      row(
        step,
        counts[i] as number,
        patientsWhere((eye) => flow.code[eye] === i),
      ),
    ),
  ];
}
