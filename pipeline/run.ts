import { integersOf } from '../src/columns/table.js';
import { concatFindings, countOfSeverity } from '../src/findings/builder.js';
import type { CanonicalTables } from '../src/records/canonical.js';
import type { Findings } from '../src/records/finding.js';
import type { Plan } from '../src/records/plan.js';
import type { RawTable } from '../src/records/raw-table.js';
import { indexResults } from '../src/results/index.js';
import { en } from '../src/words/index.js';
import { ingest } from './1-ingest.js';
import { harmonise } from './2-harmonise.js';
import { qualify } from './3-qualify.js';
import { derive } from './4-derive.js';
import { analyse } from './5-analyse.js';
import { draw } from './6-draw.js';
import { tabulate } from './6-tabulate.js';
import { publish, publishCheck } from './7-publish.js';
import type { CheckOutcome, Gathered, Halt, RunOutcome, TraceOutcome } from './commands/outcome.js';
import type { Io, Say } from './io.js';
import { plan as planFrom } from './plan.js';
import { prepare, prepareCheck } from './publish/prepare.js';
import { reportFolder } from './publish/report-folder.js';
import { findEye, traceEye } from './trace.js';

/** The whole audit: exports in, report folder out. The stages in their order, and nothing else. */
export async function run(text: string, io: Io, options: { replace: boolean }, say: Say): Promise<RunOutcome> {
  const planned = planFrom(text);
  if ('faults' in planned) return { kind: 'faults', faults: planned.faults };
  const { plan } = planned;
  const obstacle = await prepare(plan, io, options);
  if (obstacle) return { kind: 'refused', obstacle };

  const read = await readExports(plan, io, say);
  if (!('tables' in read)) return stopped(plan, read, io);
  const { raw, tables, findings } = read;
  const derived = derive(tables, plan);
  say('analyse', 0, 1);
  const results = indexResults(analyse(derived, plan));
  const typeset = tabulate(results, plan, en);
  const figures = draw(results, derived.points, plan, en);
  const internalFigures = draw(results, derived.points, plan, en, eyeNames(tables));
  const all = { audit: text, raw, findings, derived, results, typeset, figures, internalFigures };
  const published = await publish(all, plan, io, say, { words: en, ...options });
  return published.kind === 'refused' ? published : { kind: 'published', plan, all, published };
}

/** Reads, harmonises and applies the rules; publishes nothing but what is doubtful. */
export async function check(text: string, io: Io, say: Say): Promise<CheckOutcome> {
  const planned = planFrom(text);
  if ('faults' in planned) return { kind: 'faults', faults: planned.faults };
  const { plan } = planned;
  const obstacle = await prepareCheck(plan, io);
  if (obstacle) return { kind: 'refused', obstacle };

  const read = await readExports(plan, io, say);
  if (!('tables' in read)) return stopped(plan, read, io);
  const derived = derive(read.tables, plan);
  const results = indexResults(analyse(derived, plan));
  const gathered = { raw: read.raw, findings: read.findings, derived, results };
  await publishCheck(gathered, plan, io, en);
  return { kind: 'checked', plan, gathered };
}

/** One eye from its raw cells to every number it enters; writes nothing. */
export async function trace(
  text: string,
  io: Io,
  { patient, eye: side }: { patient: string; eye: 'right' | 'left' },
  say: Say,
): Promise<TraceOutcome> {
  const planned = planFrom(text);
  if ('faults' in planned) return { kind: 'faults', faults: planned.faults };
  const { plan } = planned;
  const read = await readExports(plan, io, say);
  if (!('tables' in read)) return { kind: 'stopped', plan, gathered: read, former: false };
  const derived = derive(read.tables, plan);
  const eye = findEye(derived, patient, side);
  if (eye === undefined) return { kind: 'no eye' };
  return { kind: 'traced', plan, trace: traceEye({ derived, raw: read.raw, plan, words: en, eye }, patient, side) };
}

/** Exports that may be analysed; without `tables` a finding stops the audit. */
interface Exports {
  raw: readonly RawTable[];
  tables: CanonicalTables;
  findings: Findings;
}

/** Ingest, harmonise, qualify; after each the audit stops where a finding says so, having gathered all of that stage. */
async function readExports(plan: Plan, io: Io, say: Say): Promise<Exports | Gathered> {
  const { raw, findings: ofReading } = await ingest(plan, io, say);
  if (stops(ofReading)) return { raw, findings: ofReading };
  say('harmonise', 0, 1);
  const harmonised = harmonise(raw, plan);
  const soFar = concatFindings([ofReading, harmonised.findings]);
  if (stops(soFar)) return { raw, findings: soFar };
  say('qualify', 0, 1);
  const qualified = qualify(harmonised.tables, raw, plan);
  const findings = concatFindings([soFar, qualified.findings]);
  return stops(findings) ? { raw, findings } : { raw, tables: qualified.tables, findings };
}

const stops = (findings: Findings): boolean => countOfSeverity(findings, 'stop') > 0;

/** What stopped the audit is written beside the report, which stays as it was. */
async function stopped(plan: Plan, gathered: Gathered, io: Io): Promise<Halt> {
  const former = (await io.stat(reportFolder(plan).target)) !== undefined;
  await publishCheck(gathered, plan, io, en);
  return { kind: 'stopped', plan, gathered, former };
}

/** Names of eyes for the internal page: patient code and side. */
function eyeNames({ eyes, patients }: CanonicalTables): (eye: number) => string {
  const patient = integersOf(eyes, 'patient');
  const laterality = integersOf(eyes, 'laterality');
  return (eye) => `${patients[patient[eye] as number]} ${laterality[eye] === 0 ? 'right' : 'left'}`;
}
