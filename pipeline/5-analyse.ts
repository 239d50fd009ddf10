import { acuityRows } from '../src/analysis/acuity.js';
import { continuousRows, errorRows } from '../src/analysis/continuous.js';
import { flowRows } from '../src/analysis/flow.js';
import { type EyeGroup, type Sample, type SampleColumns, sampleOf } from '../src/analysis/sample.js';
import { propertyRows } from '../src/analysis/share.js';
import { vectorRows } from '../src/analysis/vector.js';
import { integersOf, numbersOf } from '../src/columns/table.js';
import { analysedIn } from '../src/eligibility/membership.js';
import type { Derived, Grouping } from '../src/records/derived.js';
import { families, type Measure } from '../src/records/measure.js';
import type { Plan } from '../src/records/plan.js';
import type { ResultRow } from '../src/records/result.js';
import { groupPair } from '../src/results/index.js';
import { auditRows } from './analyse/audit-rows.js';
import { lowVisionRow } from './analyse/low-vision.js';

/** The groups of eyes that results are given for. */
interface Groups {
  all: EyeGroup;
  cohorts: readonly EyeGroup[];
  subgroups: readonly EyeGroup[];
}

function groupsFrom({ field, names, code }: Grouping): readonly EyeGroup[] {
  return names.map((name, i) => ({
    key: groupPair(field, name),
    eyes: Int32Array.from(code.keys()).filter((eye) => code[eye] === i + 1),
  }));
}

/** A subgroup that is a cohort already would give two rows of one name. */
function groupsOf({ eyes, cohorts, subgroups }: Derived): Groups {
  return {
    all: { key: 'all', eyes: Int32Array.from({ length: eyes.numRows() }, (_, eye) => eye) },
    cohorts: cohorts ? groupsFrom(cohorts) : [],
    subgroups: subgroups.filter(({ field }) => field !== cohorts?.field).flatMap(groupsFrom),
  };
}

/** The rows of one measure in one group, by what kind of quantity it is. */
function rowsFor(sample: Sample, y: Float64Array): readonly ResultRow[] {
  const { measure } = sample;
  if (measure.kind === 'vector') return vectorRows(sample, y);
  if (measure.kind === 'share') return propertyRows(sample);
  if (measure.lines) return acuityRows(sample);
  return measure.bins ? errorRows(sample) : continuousRows(sample);
}

function measureRows(measure: Measure, derived: Derived, groups: Groups, plan: Plan): readonly ResultRow[] {
  const { eyes, membership } = derived;
  const columns: SampleColumns = {
    values: numbersOf(eyes, measure.name),
    absolute: measure.absoluteFrom === undefined ? undefined : numbersOf(eyes, measure.absoluteFrom),
    patient: integersOf(eyes, 'patient'),
    analysed: analysedIn(membership[measure.family]),
  };
  const settings = { confidence: plan.statistics.confidence, auditIcc: new Map<string, number | undefined>() };
  const inGroups = [groups.all, ...groups.cohorts, ...(measure.groupings === 'all' ? groups.subgroups : [])];
  const second = measure.vector && numbersOf(eyes, `${measure.vector.name}_y`);
  return inGroups.flatMap((group) => {
    const sample = sampleOf(measure, group, columns, settings);
    const y = second ? sampleOf({ ...measure, name: `${measure.name} y` }, group, { ...columns, values: second }, settings).values : sample.values;
    const rows = rowsFor(sample, y);
    return measure.lines ? [...rows, lowVisionRow(sample, group, measure, derived)] : rows;
  });
}

function assertRows(rows: readonly ResultRow[]): readonly ResultRow[] {
  const missing = new Map(rows.filter(({ statistic }) => statistic === 'missing').map((row) => [`${row.measure}|${row.group}`, row]));
  for (const row of rows) {
    const label = `${row.measure}|${row.group}|${row.statistic}`;
    if ([row.value, row.ci_low, row.ci_high].some((value) => value !== undefined && !Number.isFinite(value))) {
      throw new RangeError(`analyse: ${label} is not a finite number; a value that does not exist is left empty`);
    }
    if (row.statistic !== 'n') continue;
    const absent = missing.get(`${row.measure}|${row.group}`)?.value;
    if (absent !== undefined && (row.value as number) + absent !== row.eyes) {
      throw new RangeError(`analyse: ${label}: ${row.value} with and ${absent} without a value are not ${row.eyes} eyes`);
    }
  }
  return rows;
}

/**
 * Stage 5 · analyse: what do groups of eyes show?
 *
 * in       eyes with their measures, families and groups
 * out      one row a number, in the order of registry, group and statistic
 * promise  n + missing = eyes in every group (asserted); no row leaves with a number that is none (asserted)
 */
export function analyse(derived: Derived, plan: Plan): readonly ResultRow[] {
  const groups = groupsOf(derived);
  const patient = integersOf(derived.eyes, 'patient');
  const audit = [groups.all, ...groups.cohorts];
  const measures = derived.registry.filter((measure) => !measure.step && measure.vector?.component !== 'y');
  return assertRows([
    ...auditRows(derived, audit, plan),
    ...families.flatMap((family) => audit.flatMap((group) => flowRows(derived.membership[family], group, patient))),
    ...measures.flatMap((measure) => measureRows(measure, derived, groups, plan)),
  ]);
}
