import { type EyeGroup, sampleOf } from '../../src/analysis/sample.js';
import { standardisedRow } from '../../src/comparison/baseline.js';
import type { Compared } from '../../src/comparison/compared.js';
import type { Compares } from '../../src/comparison/confounding.js';
import { outcomeRows } from '../../src/comparison/outcome-rows.js';
import { nameOf } from '../../src/comparison/primaries.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { columnsOf, type MeasureColumns } from './columns.js';
import { outcomePairs } from './outcomes.js';

/** Patients of two cohorts that have a value. */
function patientsWith({ values, patient, analysed }: MeasureColumns, { compared, reference }: Compares): number {
  const met = new Set<number>();
  const meet = ({ eyes }: EyeGroup): void => {
    for (const eye of eyes) {
      if (analysed[eye] && !Number.isNaN(values[eye] as number)) met.add(patient[eye] as number);
    }
  };
  meet(compared);
  meet(reference);
  return met.size;
}

function standardisedRows(
  measure: Measure,
  columns: MeasureColumns,
  compares: Compares,
  plan: Plan,
): readonly ResultRow[] {
  const settings = { confidence: plan.statistics.confidence, auditIcc: new Map<string, number | undefined>() };
  const patients = patientsWith(columns, compares);
  const rowOf = (statistic: string, values: Float64Array): ResultRow => {
    const of = (group: EyeGroup) => sampleOf(measure, group, { ...columns, values }, settings);
    return standardisedRow(compares.group, statistic, of(compares.compared), of(compares.reference), patients);
  };
  const { values, second } = columns;
  if (!second) return [rowOf('standardised_difference', values)];
  return [rowOf('standardised_difference_x', values), rowOf('standardised_difference_y', second)];
}

const meanDays: Compared = {
  statistic: 'difference_mean',
  of: 'mean',
  by: 'mean',
  on: 'values',
  better: undefined,
  meets: undefined,
};

/** How many days later the eyes of one cohort were seen. */
function laterRow(measure: Measure, columns: MeasureColumns, compares: Compares, plan: Plan): readonly ResultRow[] {
  const pairs = outcomePairs(columns, compares);
  const about = { measure: nameOf(measure), group: compares.group, eyes: pairs.values.eyes, unit: measure.unit };
  const level = plan.statistics.confidence;
  const declared = { level, primaries: undefined, margin: undefined, difference: undefined };
  return outcomeRows(about, meanDays, pairs, declared, () => undefined).rows.slice(0, 1);
}

/** Standardised differences of what eyes were before surgery, and of when they were seen. */
export function baselineCompared(comparisons: readonly Compares[], derived: Derived, plan: Plan): readonly ResultRow[] {
  return derived.registry
    .filter(({ role, vector, step }) => role && !step && vector?.component !== 'y')
    .flatMap((measure) => {
      const columns = columnsOf(measure, derived);
      return comparisons.flatMap((compares) => [
        ...standardisedRows(measure, columns, compares, plan),
        ...(measure.role === 'follow-up' ? laterRow(measure, columns, compares, plan) : []),
      ]);
    });
}
