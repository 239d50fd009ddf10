import { ingest } from '../../pipeline/1-ingest.js';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { qualify } from '../../pipeline/3-qualify.js';
import { derive } from '../../pipeline/4-derive.js';
import { analyse } from '../../pipeline/5-analyse.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import { concatFindings, findingAt } from '../../src/findings/builder.js';
import type { Derived } from '../../src/records/derived.js';
import type { Finding } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults, type Results } from '../../src/results/index.js';

/** Everything that an audit has found before its first table is set. */
export interface Audit {
  plan: Plan;
  raw: readonly RawTable[];
  findings: readonly Finding[];
  derived: Derived;
  rows: readonly ResultRow[];
  results: Results;
}

export type Files = Readonly<Record<string, string | Uint8Array>>;

/** An audit of files held in memory, from the text of audit.yaml to results rows. @throws where audit.yaml has faults */
export async function auditOf(text: string, files: Files): Promise<Audit> {
  const planned = planFrom(text);
  if ('faults' in planned)
    throw new RangeError(`audit.yaml: ${planned.faults.map(({ message }) => message).join('; ')}`);
  return auditBy(planned.plan, files);
}

/** The same for a plan that is already resolved. @throws where a finding stops the audit */
export async function auditBy(plan: Plan, files: Files): Promise<Audit> {
  const read = await ingest(plan, memoryIo(files), () => {});
  const harmonised = harmonise(read.raw, plan);
  const qualified = qualify(harmonised.tables, read.raw, plan);
  const all = concatFindings([read.findings, harmonised.findings, qualified.findings]);
  const findings = Array.from({ length: all.length }, (_, i) => findingAt(all, i));
  const stops = findings.filter(({ severity }) => severity === 'stop');
  if (stops.length > 0)
    throw new RangeError(`stopped: ${stops.map(({ rule, column }) => `${rule} ${column}`).join('; ')}`);
  const derived = derive(qualified.tables, plan);
  const rows = analyse(derived, plan);
  return { plan, raw: read.raw, findings, derived, rows, results: indexResults(rows) };
}
