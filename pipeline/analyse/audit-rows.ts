import type { EyeGroup } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexPatients, type PatientIndex } from '../../src/statistics/patients.js';
import { shareInterval } from '../../src/statistics/share.js';

type Parts = Pick<ResultRow, 'measure' | 'statistic' | 'value'> & Partial<ResultRow>;

const plain = (parts: Parts, group: string, eyes: number): ResultRow => ({
  group,
  ci_low: undefined,
  ci_high: undefined,
  n: parts.value ?? 0,
  eyes,
  patients: 0,
  unit: 'eyes',
  method: 'count',
  note: '',
  ...parts,
});

/** Eyes that are eligible and whose outcome window has closed. */
function dueEyes({ membership }: Derived, group: EyeGroup): { due: Int32Array; early: number } {
  const { steps, code } = membership.refraction;
  const early = steps.indexOf('not_yet_due');
  const stepOf = (eye: number): number => code[eye] as number;
  return {
    due: group.eyes.filter((eye) => stepOf(eye) > early),
    early: group.eyes.filter((eye) => stepOf(eye) === early).length,
  };
}

function completenessRows(derived: Derived, group: EyeGroup, patient: Int32Array, plan: Plan): readonly ResultRow[] {
  const { due, early } = dueEyes(derived, group);
  const hits = Uint8Array.from(due, (eye) => ((derived.assembly.outcomeVisit[eye] as number) > 0 ? 1 : 0));
  const patients = indexPatients(due.map((eye) => patient[eye] as number));
  const share = shareInterval(hits, patients, plan.statistics.confidence, { method: 'wilson' });
  const about = { measure: 'completeness', n: due.length, patients: patients.count };
  const row = (parts: Omit<Parts, 'measure'>): ResultRow => plain({ ...about, ...parts }, group.key, group.eyes.length);
  return [
    row({
      statistic: 'share',
      value: share.value,
      ci_low: share.low,
      ci_high: share.high,
      unit: 'share',
      method: share.method,
      note: share.notes.join(';'),
    }),
    row({ statistic: 'count', value: share.count }),
    row({ statistic: 'due', value: due.length }),
    row({ statistic: 'not_yet_due', value: early, n: early }),
  ];
}

function operatedRows(group: EyeGroup, patients: PatientIndex): readonly ResultRow[] {
  const about = { measure: 'eyes_operated', patients: patients.count };
  const eyes = group.eyes.length;
  return [
    plain({ ...about, statistic: 'count', value: eyes }, group.key, eyes),
    plain({ ...about, statistic: 'patients', value: patients.count, n: eyes, unit: 'patients' }, group.key, eyes),
    plain(
      { ...about, statistic: 'patients_both_eyes', value: patients.bilateral, n: eyes, unit: 'patients' },
      group.key,
      eyes,
    ),
  ];
}

/** What footnotes say about how the values were come by: counts over all eyes. */
function provenanceRows({ counts }: Derived, eyes: number): readonly ResultRow[] {
  const row = (statistic: string, value: number): ResultRow =>
    plain({ measure: 'provenance', statistic, value }, 'all', eyes);
  return [
    row('vertex_assumed', counts.vertexAssumed),
    row('without_target', counts.withoutTarget),
    row('value_from_other_day', counts.otherDay),
    row('repositioned', counts.repositioned),
  ];
}

/** Whether the target of the astigmatism treatment is the predicted residual; else it is 0 for every eye. */
function targetRow({ eyes }: Derived): ResultRow {
  const [value = 0] = numbersOf(eyes, 'treatment.target_is_predicted');
  const n = eyes.numRows();
  return plain({ measure: 'treatment', statistic: 'target_is_predicted', value, n, unit: '', method: '' }, 'all', n);
}

/** The audit as a whole: eyes and patients, completeness of follow-up, and what footnotes have to say. */
export function auditRows(derived: Derived, groups: readonly EyeGroup[], plan: Plan): readonly ResultRow[] {
  const patient = integersOf(derived.eyes, 'patient');
  const patientsOf = (eyes: Int32Array): PatientIndex => indexPatients(eyes.map((eye) => patient[eye] as number));
  return [
    ...groups.flatMap((group) => operatedRows(group, patientsOf(group.eyes))),
    ...groups.flatMap((group) => completenessRows(derived, group, patient, plan)),
    ...provenanceRows(derived, derived.eyes.numRows()),
    targetRow(derived),
  ];
}
