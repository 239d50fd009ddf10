import type { FormerRow } from '../../src/records/former-row.js';
import type { Plan } from '../../src/records/plan.js';
import type { Io } from '../io.js';
import { readResults } from './former.js';
import { resultsPath } from './report-folder.js';

const numberOf = (text: string | undefined): number | undefined =>
  text === undefined || text === '' ? undefined : Number(text);

/**
 * Rows of the report that audit.yaml names as the former one.
 *
 * @returns undefined where it names none, or there is no report that can be read
 */
export async function formerReport(plan: Plan, io: Io): Promise<readonly FormerRow[] | undefined> {
  const folder = plan.benchmarks.former_report;
  if (folder === undefined) return undefined;
  const rows = await readResults(io, `${folder}/${resultsPath}`);
  return rows?.map((row) => ({
    measure: row.measure ?? '',
    group: row.group ?? '',
    statistic: row.statistic ?? '',
    value: numberOf(row.value),
    ci_low: numberOf(row.ci_low),
    ci_high: numberOf(row.ci_high),
    n: Number(row.n),
    patients: Number(row.patients),
  }));
}
