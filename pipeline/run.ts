import { givenAnswers } from '../src/answers/given.js';
import { type Judged, settle } from '../src/answers/settle.js';
import { chartCohorts, namedCohorts } from '../src/charts/cohorts.js';
import { publishedCharts } from '../src/charts/index.js';
import { integersOf } from '../src/columns/table.js';
import { concatFindings, countOfSeverity } from '../src/findings/builder.js';
import { artworkNames } from '../src/plan/published.js';
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
import { publish, publishCheck, publishFigure } from './7-publish.js';
import type { CheckOutcome, DrawOutcome, Halt, RunOutcome, TraceOutcome } from './commands/outcome.js';
import { type DrawRequest, planFor, roomMissing } from './draw-again.js';
import type { Io, Say } from './io.js';
import { plan as planFrom } from './plan.js';
import { tracedFigures, tracedTables } from './provenance.js';
import type { Gathered } from './publish/everything.js';
import { formerReport } from './publish/former-report.js';
import { prepare, prepareCheck } from './publish/prepare.js';
import { sharedResults } from './shared-results.js';
import { findEye, traceEye } from './trace.js';

/** The whole audit: exports in, report folder out. The stages in their order, and nothing else. */
export async function run(text: string, io: Io, options: { replace: boolean }, say: Say): Promise<RunOutcome> {
  const planned = planFrom(text);
  if ('faults' in planned) return { kind: 'faults', faults: planned.faults };
  const { plan } = planned;
  const obstacle = await prepare(plan, io, options);
  if (obstacle) return { kind: 'refused', obstacle };

  const read = await readExports(plan, io, say);
  if (!isFit(read)) return stopped(plan, read, io);
  const derived = derive(read.tables, plan);
  say('analyse', 0, 1);
  const results = indexResults(analyse(derived, plan, await formerReport(plan, io)));
  const shared = sharedResults(results, derived, plan);
  const typeset = tracedTables(tabulate(shared, plan, en), shared, en);
  const figures = tracedFigures(draw(shared, derived.points, plan, en), shared, en);
  const internalTypeset = shared === results ? typeset : tracedTables(tabulate(results, plan, en), results, en);
  const named = draw(results, derived.points, plan, en, eyeNames(read.tables));
  const internalFigures = tracedFigures(named, results, en);
  const all = { ...read, audit: text, derived, results, shared, typeset, internalTypeset, figures, internalFigures };
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
  if (!isFit(read)) return stopped(plan, read, io);
  const found = { ...read, results: indexResults(analyse(derive(read.tables, plan), plan)) };
  return { kind: 'checked', plan, found, folder: await publishCheck(found, plan, io, en) };
}

/** One eye from its raw cells to every number it enters; writes no report. */
export async function trace(text: string, io: Io, of: { patient: string; eye: Side }, say: Say): Promise<TraceOutcome> {
  const planned = planFrom(text);
  if ('faults' in planned) return { kind: 'faults', faults: planned.faults };
  const { plan } = planned;
  const read = await readExports(plan, io, say);
  if (!isFit(read)) return stopped(plan, read, io);
  const derived = derive(read.tables, plan);
  const eye = findEye(derived, of.patient, of.eye);
  if (eye === undefined) return { kind: 'no eye' };
  const results = indexResults(analyse(derived, plan));
  const traced = { derived, raw: read.raw, results, tables: tabulate(results, plan, en), plan, words: en, eye };
  return { kind: 'traced', plan, trace: traceEye(traced, of.patient, of.eye) };
}

/** One figure again, in another way; the report stays as it is. */
export async function drawAgain(text: string, io: Io, request: DrawRequest, say: Say): Promise<DrawOutcome> {
  const planned = planFrom(text);
  if ('faults' in planned) return { kind: 'faults', faults: planned.faults };
  const known = [...publishedCharts.keys(), ...planned.plan.outputs.panels.map(({ name }) => name)];
  if (!known.includes(request.figure)) return { kind: 'no figure', known };
  const profiles = [...artworkNames, ...Object.keys(planned.plan.outputs.profiles)];
  if (request.artwork !== undefined && !profiles.includes(request.artwork))
    return { kind: 'no artwork', known: profiles };
  const plan = planFor(planned.plan, request);
  const least = roomMissing(plan, request);
  if (least !== undefined) return { kind: 'no room', least };
  const read = await readExports(plan, io, say);
  if (!isFit(read)) return stopped(plan, read, io);
  const derived = derive(read.tables, plan);
  say('analyse', 0, 1);
  const results = indexResults(analyse(derived, plan, await formerReport(plan, io)));
  const shared = sharedResults(results, derived, plan);
  const all = chartCohorts(shared, plan, en);
  const chosen = request.cohorts.length === 0 ? { cohorts: all } : namedCohorts(request.cohorts, all, en);
  if ('known' in chosen) return { kind: 'no cohort', known: chosen.known };
  const figures = draw(shared, derived.points, plan, en, undefined, chosen.cohorts);
  const figure = figures.find(({ id }) => id === request.figure);
  if (figure === undefined) return { kind: 'no figure', known: figures.map(({ id }) => id) };
  return { kind: 'drawn', plan, figure, files: await publishFigure(figure, plan, io, say) };
}

type Side = 'right' | 'left';

/** Exports that no finding keeps from being analysed. */
type FitExports = Gathered & { tables: CanonicalTables };

const stops = (findings: Findings): boolean => countOfSeverity(findings, 'stop') > 0;

function isFit(read: Gathered): read is FitExports {
  return read.tables !== undefined && !stops(read.findings);
}

/**
 * Ingest, harmonise, qualify; after each the audit stops where a finding says so, having gathered all of that stage. What
 * the clinic has answered to earlier queries stands in the tables.
 */
async function readExports(plan: Plan, io: Io, say: Say): Promise<Gathered> {
  const { raw, answers, findings: ofReading } = await ingest(plan, io, say);
  const nothing = { tables: undefined, results: undefined, answered: new Set<string>() };
  if (stops(ofReading)) return { raw, answers, findings: ofReading, ...nothing };
  const judgeFiles = (files: readonly RawTable[]): Judged => {
    const { tables, findings } = judge(files, plan, say);
    return { tables, findings: concatFindings([ofReading, findings]) };
  };
  const { judged, ...settled } = settle(raw, givenAnswers(answers), plan, judgeFiles);
  return { ...nothing, ...settled, answers, tables: judged.tables };
}

/** Harmonise and, unless that stops the audit, qualify. */
function judge(raw: readonly RawTable[], plan: Plan, say: Say): Judged {
  say('harmonise', 0, 1);
  const harmonised = harmonise(raw, plan);
  if (stops(harmonised.findings)) return harmonised;
  say('qualify', 0, 1);
  const { tables, findings } = qualify(harmonised.tables, raw, plan);
  return { tables, findings: concatFindings([harmonised.findings, findings]) };
}

/** What stopped the audit is written beside the report, which stays as it was. */
async function stopped(plan: Plan, found: Gathered, io: Io): Promise<Halt> {
  return { kind: 'stopped', plan, found, folder: await publishCheck(found, plan, io, en) };
}

/** Names of eyes for the internal page: patient code and side. */
function eyeNames({ eyes, patients }: CanonicalTables): (eye: number) => string {
  const patient = integersOf(eyes, 'patient');
  const laterality = integersOf(eyes, 'laterality');
  return (eye) => `${patients[patient[eye] as number]} ${laterality[eye] === 0 ? 'right' : 'left'}`;
}
