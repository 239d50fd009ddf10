import { categoriesOf, hasColumn, numbersOf } from '../../src/columns/table.js';
import { conditionOn } from '../../src/eligibility/condition.js';
import { lookupIn } from '../../src/eligibility/lookup.js';
import { groupByBand, groupByCategory, groupByNumber, groupSizes, reordered } from '../../src/groups/grouping.js';
import type { CanonicalTables } from '../../src/records/canonical.js';
import type { Grouping } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { Assembly } from '../../src/visits/assemble.js';

/** Numbers of the eyes that a group may stand on: fields, and measures already computed. */
type Numbers = (name: string) => Float64Array | undefined;

/** The groups of one field; undefined where no export has it. */
function groupsOf(field: string, tables: CanonicalTables, numbers: Numbers, plan: Plan): Grouping | undefined {
  const edges = plan.bands[field];
  const values = numbers(field === 'k_mean' ? 'k_mean_before' : field);
  if (edges && values) return groupByBand(field, values, edges);
  if (field === 'year') return groupByNumber(field, numbersOf(tables.eyes, 'year'));
  if (!hasColumn(tables.eyes, field)) return undefined;
  return values ? groupByNumber(field, values) : groupByCategory(field, categoriesOf(tables.eyes, field));
}

function declaredGroups(tables: CanonicalTables, assembly: Assembly, plan: Plan): Grouping {
  const lookup = lookupIn(tables, assembly);
  const tests = plan.cohorts.define.map(({ condition }) => conditionOn(condition, lookup));
  const code = Int32Array.from({ length: tables.eyes.numRows() }, (_, eye) => tests.findIndex((test) => test(eye)) + 1);
  return { field: 'cohort', names: plan.cohorts.define.map(({ name }) => name), code };
}

/** Reference first, then the cohorts to compare; without a declaration the largest is the reference. */
function inOrder(groups: Grouping, plan: Plan): Grouping {
  const sizes = groupSizes(groups);
  const largest = groups.names[sizes.indexOf(Math.max(...sizes))] ?? '';
  const reference = plan.cohorts.reference ?? largest;
  const declared = plan.cohorts.compare.length > 0 ? plan.cohorts.compare : groups.names;
  return reordered(groups, [reference, ...declared.filter((name) => name !== reference)]);
}

/** The audit's cohorts; undefined where none are declared, or the field holds one value only. */
export function cohortsOf(
  tables: CanonicalTables,
  assembly: Assembly,
  numbers: Numbers,
  plan: Plan,
): Grouping | undefined {
  const { by, define } = plan.cohorts;
  const groups = define.length > 0 ? declaredGroups(tables, assembly, plan) : by && groupsOf(by, tables, numbers, plan);
  return groups && groups.names.length > 1 ? inOrder(groups, plan) : undefined;
}

/** The subgroups in which prediction errors are tabulated; fields that no export has are passed over. */
export function subgroupsOf(tables: CanonicalTables, numbers: Numbers, plan: Plan): readonly Grouping[] {
  return plan.subgroups.flatMap((field) => groupsOf(field, tables, numbers, plan) ?? []);
}

/** The groups that what an operation takes is told by, where the export has them. */
export function resourceStrata(tables: CanonicalTables, numbers: Numbers, plan: Plan): readonly Grouping[] {
  return ['nucleus_grade', 'machine'].flatMap((field) => groupsOf(field, tables, numbers, plan) ?? []);
}
