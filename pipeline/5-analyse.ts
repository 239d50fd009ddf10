import { flowRows } from '../src/analysis/flow.js';
import { integersOf } from '../src/columns/table.js';
import type { Derived } from '../src/records/derived.js';
import type { FormerRow } from '../src/records/former-row.js';
import { families } from '../src/records/measure.js';
import type { Plan } from '../src/records/plan.js';
import type { ResultRow } from '../src/records/result.js';
import { auditRows } from './analyse/audit-rows.js';
import { benchmarkRows } from './analyse/benchmarks.js';
import { centringRows } from './analyse/centring.js';
import { comparisonRows } from './analyse/comparison.js';
import { formerRows } from './analyse/former.js';
import { funnelRows } from './analyse/funnel.js';
import { groupsOf } from './analyse/groups.js';
import { lensConstantRows } from './analyse/lens-constants.js';
import { measureRows } from './analyse/measure-rows.js';
import { missingOutcomeRows } from './analyse/missing-outcomes.js';
import { monitoringRows } from './analyse/monitoring.js';
import { recomputedRows } from './analyse/recomputed.js';
import { stabilityRows } from './analyse/stability.js';
import { trendsOf } from './analyse/trends.js';

function assertRows(rows: readonly ResultRow[]): readonly ResultRow[] {
  const missing = new Map(
    rows.filter(({ statistic }) => statistic === 'missing').map((row) => [`${row.measure}|${row.group}`, row]),
  );
  for (const row of rows) {
    const label = `${row.measure}|${row.group}|${row.statistic}`;
    if ([row.value, row.ci_low, row.ci_high].some((value) => value !== undefined && !Number.isFinite(value))) {
      throw new RangeError(`analyse: ${label} is not a finite number; a value that does not exist is left empty`);
    }
    if (row.statistic !== 'n') continue;
    const absent = missing.get(`${row.measure}|${row.group}`)?.value;
    if (absent !== undefined && (row.value as number) + absent !== row.eyes) {
      throw new RangeError(
        `analyse: ${label}: ${row.value} with and ${absent} without a value are not ${row.eyes} eyes`,
      );
    }
  }
  return rows;
}

/**
 * Stage 5 · analyse: what do groups of eyes show, and how do they differ?
 *
 * in       eyes with their measures, families and groups; the rows of a former report, where audit.yaml names one
 * out      one row a number, in the order of registry, group and statistic; behind them what compares groups
 * promise  n + missing = eyes in every group (asserted); no row leaves with a number that is none (asserted)
 */
export function analyse(derived: Derived, plan: Plan, former?: readonly FormerRow[]): readonly ResultRow[] {
  const groups = groupsOf(derived);
  const patient = integersOf(derived.eyes, 'patient');
  const audit = [groups.all, ...groups.cohorts];
  const measures = derived.registry.filter((measure) => !measure.step && measure.vector?.component !== 'y');
  const rows = [
    ...auditRows(derived, audit, plan),
    ...families.flatMap((family) => audit.flatMap((group) => flowRows(derived.membership[family], group, patient))),
    ...measures.flatMap((measure) => measureRows(measure, derived, groups, plan)),
    ...centringRows(derived),
    ...missingOutcomeRows(derived, groups, plan),
    ...trendsOf(derived, groups, plan),
    ...recomputedRows(derived, groups, plan),
    ...lensConstantRows(derived, groups, plan),
    ...comparisonRows(derived, groups, plan),
    ...stabilityRows(derived, audit, plan),
    ...benchmarkRows(derived, plan),
    ...monitoringRows(derived, plan),
    ...funnelRows(derived, plan),
  ];
  return assertRows([...rows, ...formerRows(rows, former)]);
}
