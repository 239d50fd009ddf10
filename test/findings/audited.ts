import { ingest } from '../../pipeline/1-ingest.js';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { type Qualified, qualify } from '../../pipeline/3-qualify.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { concatFindings, findingAt } from '../../src/findings/builder.js';
import type { Finding, Findings } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';

/** What stands after the first three stages. */
export interface Audited extends Qualified {
  raw: readonly RawTable[];
}

/** Files in memory, brought through ingest, harmonise and qualify; findings are those of all three. */
export async function audited(files: Readonly<Record<string, string | Uint8Array>>, plan: Plan): Promise<Audited> {
  const read = await ingest(plan, memoryIo(files), () => {});
  const harmonised = harmonise(read.raw, plan);
  const qualified = qualify(harmonised.tables, read.raw, plan);
  const findings = concatFindings([read.findings, harmonised.findings, qualified.findings]);
  return { ...qualified, raw: read.raw, findings };
}

/** Files in memory, brought through ingest alone. */
export async function ingested(files: Readonly<Record<string, string | Uint8Array>>, plan: Plan) {
  return ingest(plan, memoryIo(files), () => {});
}

/** The findings of a rule, as objects. */
export function findingsOf(findings: Findings, rule: string): readonly Finding[] {
  return allFindings(findings).filter((finding) => finding.rule === rule);
}

export function allFindings(findings: Findings): readonly Finding[] {
  return Array.from({ length: findings.length }, (_, i) => findingAt(findings, i));
}
