import { concatFindings, findingAt, findingsBuilder } from '../findings/builder.js';
import { locateColumn } from '../findings/header.js';
import { nameOf, rowAt, whoseFinder } from '../findings/whose.js';
import type { CanonicalTables } from '../records/canonical.js';
import { type Finding, type Findings, severities } from '../records/finding.js';
import type { Plan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';
import { type Correction, correctedTables } from './corrected.js';
import type { GivenAnswer } from './given.js';
import { type Outcome, tellOutcomes } from './outcomes.js';

/** What harmonise and qualify make of the files. */
export interface Judged {
  tables: CanonicalTables | undefined;
  findings: Findings;
}

/** The same when the clinic's answers are in it. */
export interface Settled<J extends Judged> {
  /** With the corrected cells. */
  raw: readonly RawTable[];
  judged: J;
  findings: Findings;
  /** Names of queries that need not be asked again. */
  answered: ReadonlySet<string>;
}

/** A finding that the query list asks about, with its name there. */
interface Asked {
  /** Place among the findings. */
  at: number;
  finding: Finding;
  name: string;
}

const asking = [severities.indexOf('query'), severities.indexOf('set aside')];

function askedIn({ tables, findings }: Judged, raw: readonly RawTable[], plan: Plan): readonly Asked[] {
  if (!tables) return [];
  const whoseOf = whoseFinder(tables, { raw, plan });
  const asked: Asked[] = [];
  for (let i = 0; i < findings.length; i++) {
    if (!asking.includes(findings.severity[i] as number)) continue;
    const finding = findingAt(findings, i);
    asked.push({ at: i, finding, name: nameOf(finding, whoseOf(finding), { raw }) });
  }
  return asked;
}

/** The cell that a finding quotes; undefined where it is about no single one. */
function cellOf(
  { source, row, column, field }: Finding,
  raw: readonly RawTable[],
  plan: Plan,
): Omit<Correction, 'value'> | undefined {
  const table = raw[source];
  const at = table && row > 0 ? rowAt(table, row) : undefined;
  if (!table || at === undefined) return undefined;
  const blocks = plan.sources[table.source]?.blocks ?? [];
  const mapped = blocks
    .flatMap((block) => [...block.columns, ...block.covariates])
    .flatMap((one) => {
      const header = locateColumn(table.header, one).index;
      return header !== undefined && table.header[header] === column ? [{ field: one.field, header }] : [];
    });
  // Sphere, cylinder and axis may stand in one cell, under the header of the refraction.
  const found = mapped.find((one) => one.field === field) ?? mapped[0];
  return found && { source, row: at, ...found };
}

/** What one round of judging leaves of the answers. */
interface Round {
  corrections: readonly Correction[];
  outcomes: readonly Outcome[];
  waiting: readonly GivenAnswer[];
}

/** A query that is answered with a new value, and the cell that it is about. */
interface Wanted {
  answer: GivenAnswer;
  finding: Finding;
  cell: Omit<Correction, 'value'> | undefined;
}

const keyOf = (cell: Wanted['cell']): string => (cell ? `${cell.source} ${cell.row} ${cell.header}` : '');

/** Corrections that this round's queries ask for. Where two answers give one cell different values, neither counts. */
function correctOnce(
  asked: readonly Asked[],
  given: readonly GivenAnswer[],
  raw: readonly RawTable[],
  plan: Plan,
): Round {
  const byName = new Map(given.map((one) => [one.query, one]));
  const wanted = asked.flatMap(({ finding, name }): readonly Wanted[] => {
    const answer = byName.get(name);
    const corrects = answer?.answer === 'corrected' && answer.corrected !== '';
    return answer && corrects ? [{ answer, finding, cell: cellOf(finding, raw, plan) }] : [];
  });
  const values = new Map<string, Set<string>>();
  for (const { cell, answer } of wanted) {
    values.set(keyOf(cell), (values.get(keyOf(cell)) ?? new Set()).add(answer.corrected));
  }
  const corrections = new Map<string, Correction>();
  const outcomes = wanted.flatMap(({ cell, answer, finding }): readonly Outcome[] => {
    const key = keyOf(cell);
    if (!cell) return [{ kind: 'not applied', answer, finding }];
    if ((values.get(key)?.size ?? 0) > 1) return [{ kind: 'contradicted', answer, finding }];
    if (corrections.has(key)) return [];
    corrections.set(key, { ...cell, value: answer.corrected });
    return [{ kind: 'corrected', answer, finding }];
  });
  const used = new Set(wanted.map(({ answer }) => answer.query));
  return { corrections: [...corrections.values()], outcomes, waiting: given.filter(({ query }) => !used.has(query)) };
}

/** What becomes of the answers that correct nothing: confirmed, not to be told, or about nothing that is asked. */
function closeAnswers(asked: readonly Asked[], waiting: readonly GivenAnswer[]): readonly Outcome[] {
  const findings = new Map(asked.map(({ name, finding }) => [name, finding]));
  return waiting.map((answer): Outcome => {
    const finding = findings.get(answer.query);
    if (answer.answer === undefined) return { kind: 'unreadable', answer };
    if (answer.answer === 'corrected') return { kind: finding ? 'incomplete' : 'without query', answer };
    return finding ? { kind: answer.answer, answer, finding } : { kind: 'without query', answer };
  });
}

/** The findings, those that the clinic has confirmed only noted; what is impossible stays left out. */
function withConfirmed(findings: Findings, asked: readonly Asked[], answered: ReadonlySet<string>): Findings {
  const names = new Map(asked.map(({ at, name }) => [at, name]));
  const all = findingsBuilder();
  for (let i = 0; i < findings.length; i++) {
    const finding = findingAt(findings, i);
    const isConfirmed = finding.severity === 'query' && answered.has(names.get(i) ?? '');
    all.add(isConfirmed ? { ...finding, severity: 'note' } : finding);
  }
  return all.build();
}

/**
 * Judges the files with what the clinic has answered: corrected cells are replaced before anything is read from them,
 * and as long as an answer corrects something the files are judged again, since a new value may raise a query that is
 * answered too. Every answer is used once.
 *
 * @param files  without the lists of answers, which findings name as if they stood behind them
 * @param judge  harmonise and qualify
 */
export function settle<J extends Judged>(
  files: readonly RawTable[],
  given: readonly GivenAnswer[],
  plan: Plan,
  judge: (raw: readonly RawTable[]) => J,
): Settled<J> {
  let [raw, waiting, judged] = [files, given, judge(files)];
  const outcomes: Outcome[] = [];
  for (;;) {
    const asked = given.length > 0 ? askedIn(judged, raw, plan) : [];
    const round = correctOnce(asked, waiting, raw, plan);
    outcomes.push(...round.outcomes);
    waiting = round.waiting;
    if (round.corrections.length === 0) {
      outcomes.push(...closeAnswers(asked, waiting));
      const confirmed = outcomes.filter(({ kind }) => kind === 'confirmed');
      const answered = new Set(confirmed.map(({ answer }) => answer.query));
      const findings = withConfirmed(judged.findings, asked, answered);
      return { raw, judged, findings: concatFindings([findings, tellOutcomes(outcomes, files.length)]), answered };
    }
    raw = correctedTables(raw, round.corrections);
    judged = judge(raw);
  }
}
