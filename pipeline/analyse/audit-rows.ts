import type { EyeGroup } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexPatients, type PatientIndex } from '../../src/statistics/patients.js';
import { outcomeCompleteness, visitCompleteness } from './completeness.js';
import { plainRow } from './plain-row.js';

function operatedRows(group: EyeGroup, patients: PatientIndex): readonly ResultRow[] {
  const about = { measure: 'eyes_operated', patients: patients.count };
  const eyes = group.eyes.length;
  return [
    plainRow({ ...about, statistic: 'count', value: eyes }, group.key, eyes),
    plainRow({ ...about, statistic: 'patients', value: patients.count, n: eyes, unit: 'patients' }, group.key, eyes),
    plainRow(
      { ...about, statistic: 'patients_both_eyes', value: patients.bilateral, n: eyes, unit: 'patients' },
      group.key,
      eyes,
    ),
  ];
}

/** What footnotes say about how the values were come by: counts over all eyes. */
function provenanceRows({ counts, eyes: values, membership }: Derived, eyes: number): readonly ResultRow[] {
  const row = (statistic: string, value: number): ResultRow =>
    plainRow({ measure: 'provenance', statistic, value }, 'all', eyes);
  const [recorded, compared] = ['spherical_equivalent', 'spherical_equivalent_compared'].map((name) =>
    numbersOf(values, name),
  ) as [Float64Array, Float64Array];
  const restated = analysedIn(membership.refraction).reduce((n, is, eye) => {
    const moved = (compared[eye] as number) - (recorded[eye] as number);
    return is && Math.abs(moved) > 0 ? n + 1 : n;
  }, 0);
  return [
    row('vertex_assumed', counts.vertexAssumed),
    row('without_target', counts.withoutTarget),
    row('value_from_other_day', counts.otherDay),
    row('repositioned', counts.repositioned),
    row('axis_missing', counts.axisMissing),
    row('vertex_restated', restated),
  ];
}

/** Whether the target of the astigmatism treatment is the predicted residual; else it is 0 for every eye. */
function targetRow({ eyes }: Derived): ResultRow {
  const [value = 0] = numbersOf(eyes, 'treatment.target_is_predicted');
  const n = eyes.numRows();
  return plainRow({ measure: 'treatment', statistic: 'target_is_predicted', value, n, unit: '', method: '' }, 'all', n);
}

/** The audit as a whole: eyes and patients, completeness of follow-up, and what footnotes have to say. */
export function auditRows(derived: Derived, groups: readonly EyeGroup[], plan: Plan): readonly ResultRow[] {
  const patient = integersOf(derived.eyes, 'patient');
  const patientsOf = (eyes: Int32Array): PatientIndex => indexPatients(eyes.map((eye) => patient[eye] as number));
  return [
    ...groups.flatMap((group) => operatedRows(group, patientsOf(group.eyes))),
    ...groups.flatMap((group) => outcomeCompleteness(derived, group, plan)),
    ...groups.flatMap((group) => visitCompleteness(derived, group, plan)),
    ...provenanceRows(derived, derived.eyes.numRows()),
    targetRow(derived),
  ];
}
