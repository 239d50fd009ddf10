import { type Leftover, leftovers } from '../intake/leftover.js';
import type { Finding } from '../records/finding.js';
import type { Plan, SourcePlan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';
import type { FieldLimits, Range } from '../rules/field-limit.js';
import { limitsOf } from '../rules/limits.js';
import { thresholdOf } from '../rules/thresholds.js';
import type { RuleWords, Telling } from '../words/en/finding-words.js';
import type { findings as english } from '../words/en/findings.js';
import { fileKinds, identifierKinds } from './detail-kinds.js';
import { foldedHeader } from './header.js';
import { linesOf, type Unsettled } from './settling-lines.js';

/** A finding in words. */
export interface Told {
  /** Stands for all findings of this rule and severity. */
  title: string;
  sentence: string;
  expected: string;
  act: string;
  /** Lines that audit.yaml may take, one of them to be chosen; indented as they belong. */
  lines: readonly string[];
  effect: string;
}

/** What is needed to put a finding into words. */
export interface TellingContext {
  raw: readonly RawTable[];
  plan: Plan;
  words: typeof english;
  /** The audit file as it was typed; `audit.yaml` in lists, which say the same wherever it lies. */
  audit?: string;
  /** Names of queries that the clinic has answered for good. */
  answered?: ReadonlySet<string>;
}

/** Everything that is known about where a finding stands. */
interface About extends TellingContext, Unsettled {
  source: SourcePlan | undefined;
}

function aboutOf(finding: Finding, context: TellingContext): About {
  const table = context.raw[finding.source];
  const source = table && context.plan.sources[table.source];
  const columns = source?.blocks.flatMap((block) => [...block.columns, ...block.covariates]) ?? [];
  const column = columns.find(
    (one) =>
      one.field === finding.field &&
      (one.column === undefined || foldedHeader(one.column) === foldedHeader(finding.column ?? '')),
  );
  return { ...context, finding, table, source, column };
}

const plainNumber = (value: number): string => String(value).replace('-', '\u2212');

/** The range that a finding passed: the impossible, the usual one, or the narrower one after surgery. */
function rangePassed({ severity, detail }: Finding, limits: FieldLimits): Range {
  if (severity !== 'query' && severity !== 'note') return limits.possible;
  const { usual, usualAfter } = limits;
  return usualAfter?.includes(detail) && !usual?.includes(detail) ? usualAfter : (usual ?? limits.possible);
}

function limitsText({ finding, plan, words }: About): string {
  const limits = limitsOf(finding.field ?? '', plan);
  if (!limits) return '';
  const [low, high] = rangePassed(finding, limits);
  if (!Number.isFinite(high)) return words.from(plainNumber(low), limits.unit);
  return words.between(plainNumber(low), plainNumber(high), limits.unit);
}

function leftoverOf({ rule, detail }: Finding): Leftover | undefined {
  return rule === 'spreadsheet-leftover' ? leftovers[detail] : undefined;
}

function kindText({ finding, words }: About): string {
  if (finding.rule === 'identifier-present') {
    const kind = identifierKinds[finding.detail];
    return kind ? words.identifiers[kind] : '';
  }
  const leftover = leftoverOf(finding);
  if (leftover) return words.leftovers[leftover];
  const kind = finding.rule === 'file-not-csv' ? fileKinds[finding.detail] : undefined;
  return kind ? words.fileKinds[kind] : '';
}

/** Most headers that a sentence lists. */
const mostHeaders = 12;

function headersOf(table: RawTable | undefined): string {
  if (!table || table.kept.length === 0) return '';
  const headers = table.header.map((header) => header.trim()).filter((header) => header !== '');
  const more = headers.length > mostHeaders ? [...headers.slice(0, mostHeaders), '…'] : headers;
  return more.join(', ');
}

function tellingOf(about: About, lines: readonly string[]): Telling {
  const { finding, table, source, column } = about;
  return {
    severity: finding.severity,
    column: finding.column ?? '',
    field: finding.field ?? '',
    value: finding.written ?? '',
    detail: finding.detail,
    other: finding.other,
    limits: limitsText(about),
    audit: about.audit ?? 'audit.yaml',
    threshold: (name) => plainNumber(thresholdOf(name, about.plan)),
    line: column?.line ?? source?.line ?? 0,
    headers: headersOf(table),
    kind: kindText(about),
    leftover: leftoverOf(finding),
    settles: lines.length > 0,
  };
}

/**
 * A finding in words.
 *
 * @throws {RangeError} when no words are known for its rule
 */
export function tell(finding: Finding, context: TellingContext): Told {
  const rule: RuleWords | undefined = context.words.rules[finding.rule];
  if (!rule) throw new RangeError(`tell: there are no words for rule ${finding.rule}`);
  const about = aboutOf(finding, context);
  const lines = linesOf(about);
  const telling = tellingOf(about, lines);
  return {
    title: rule.title(telling),
    sentence: rule.sentence(telling),
    expected: rule.expected(telling),
    act: rule.act(telling),
    lines,
    effect: context.words.effects[finding.effect],
  };
}
