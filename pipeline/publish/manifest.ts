import { type Severity, severities } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';
import type { Figure } from '../../src/records/report.js';
import { rowsBehind } from '../provenance.js';
import { sha256 } from './digest.js';
import type { Everything } from './everything.js';
import type { OutputFile } from './replace.js';
import { version } from './version.js';

export const manifestFile = 'manifest.json';

/** One file of the report, as the manifest lists it. */
export interface OutputEntry {
  file: string;
  sha256: string;
  bytes: number;
}

/**
 * What went in, by which settings, and what came out: anybody can tell whether two runs are one, and whether a
 * file was changed since. No date, path, host or user, so that the same inputs give the same manifest.
 */
export function manifest(all: Everything, plan: Plan, outputs: readonly OutputFile[]): OutputFile {
  const content = {
    format: 1,
    tool: { name: 'halfdiopter', version },
    audit: { name: plan.name, sha256: sha256(Buffer.from(all.audit)), seed: plan.statistics.seed },
    inputs: all.raw.map((table, source) => inputEntry(all, table, source)),
    // A list of answers names patients: of it nothing stands here but what it was.
    answers: all.answers.map(({ read }) => ({ sha256: read.sha256, bytes: read.bytes })),
    counts: {
      patients: all.results.get('eyes_operated', 'all', 'count').patients,
      eyes: all.results.get('eyes_operated', 'all', 'count').eyes,
      findings: findingCounts(all),
      flow: flowCounts(all),
    },
    settings: plan,
    tables: Object.fromEntries(
      all.typeset.map((table) => [
        table.id,
        { number: table.number, provenance: table.provenance, from: rowsBehind(table) },
      ]),
    ),
    figures: Object.fromEntries(
      all.figures.map((figure) => [
        figure.id,
        { number: figure.number, provenance: figure.provenance, from: figure.from, points: pointCount(all, figure) },
      ]),
    ),
    outputs: outputs.map(
      ({ path, bytes }): OutputEntry => ({ file: path, sha256: sha256(bytes), bytes: bytes.length }),
    ),
  };
  return { path: manifestFile, bytes: Buffer.from(`${JSON.stringify(content, undefined, 2)}\n`) };
}

function inputEntry(all: Everything, { label, read }: RawTable, source: number): object {
  const books = all.tables.books.find((entry) => entry.source === source);
  if (!books) throw new RangeError(`manifest: no books of ${label}; expected one entry for every file read`);
  return {
    file: label,
    sha256: read.sha256,
    bytes: read.bytes,
    encoding: read.encoding,
    delimiter: read.delimiter,
    decimal: read.decimal,
    date_order: read.dateOrder,
    rows: { read: books.read, used: books.used, set_aside: books.setAside },
  };
}

const severityKeys: Readonly<Record<Severity, string>> = {
  stop: 'stop',
  'set aside': 'set_aside',
  query: 'query',
  note: 'note',
};

function findingCounts({ findings }: Everything): Record<string, number> {
  const counts = [0, 0, 0, 0];
  for (const severity of findings.severity) counts[severity] = (counts[severity] ?? 0) + 1;
  const entries = severities.map((severity, code) => [severityKeys[severity], counts[code] ?? 0] as const);
  return Object.fromEntries(entries.toReversed());
}

/** Eyes from operated to analysed, all cohorts together; declared exclusions stand in a list of their own. */
function flowCounts({ results }: Everything): Record<string, Record<string, unknown>> {
  const flow: Record<string, Record<string, unknown>> = {};
  for (const { measure, group, statistic, value } of results.rows) {
    if (!measure.startsWith('flow:') || group !== 'all') continue;
    const family = measure.slice('flow:'.length);
    const counts = flow[family] ?? {};
    flow[family] = counts;
    if (!statistic.startsWith('excluded:')) counts[statistic] = value;
    else counts.excluded = { ...(counts.excluded as object | undefined), [statistic.slice('excluded:'.length)]: value };
  }
  return flow;
}

function pointCount({ derived }: Everything, { id, panels }: Figure): number {
  const shown = panels?.figures.map((panel) => panel.id) ?? [id];
  return derived.points.filter(({ figure }) => shown.includes(figure)).reduce((sum, { x }) => sum + x.length, 0);
}
