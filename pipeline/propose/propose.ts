import type { FindingParts } from '../../src/findings/builder.js';
import { foldedHeader } from '../../src/findings/header.js';
import { fieldNamed } from '../../src/plan/fields.js';
import { type Answers, type Choice, settled } from '../../src/propose/choices.js';
import { type Doubt, doubt } from '../../src/propose/draft/doubt.js';
import type { ExportedFile } from '../../src/propose/exported.js';
import { asBefore, sourceLike } from '../../src/propose/former.js';
import { type Former, likeProposal } from '../../src/propose/like-proposal.js';
import type { RecognisedFile } from '../../src/propose/placed.js';
import { type Proposal, proposalOf } from '../../src/propose/proposal.js';
import { recognise } from '../../src/propose/recognise.js';
import { sourcesOf } from '../../src/propose/sources.js';
import { choicesOf, type Known, known } from '../../src/propose/survey.js';
import { propose as words } from '../../src/words/en/propose.js';
import { filesOfSource } from '../ingest/files.js';
import type { TableRead } from '../ingest/read-table.js';
import type { Io, Say } from '../io.js';
import { plan as planFrom } from '../plan.js';
import { stopsAhead } from './ahead.js';
import { gate, judgedBy, type Looked, lookAt, usedAs } from './look.js';

/** What keeps a file from being proposed for: it cannot be read, or it identifies persons. */
export interface UnfitFile {
  file: string;
  label: string;
  findings: readonly FindingParts[];
}

/** Puts one choice to somebody. @returns the value chosen; '' leaves it open; undefined takes what the data say */
export type Ask = (choice: Choice, number: number, of: number, seen: Proposal) => Promise<string | undefined>;

export interface ProposeOptions {
  ask?: Ask | undefined;
  /** A former audit whose mapping is carried over. */
  former?: Former | undefined;
  /** Whether files lie outside the folder that audit.yaml is written to. */
  outside?: boolean;
}

export type ProposeOutcome =
  | { kind: 'unfit'; files: readonly UnfitFile[] }
  /** No file says whom and which eye its rows are of. */
  | { kind: 'nothing'; proposal: Proposal }
  | { kind: 'proposed'; proposal: Proposal; open: readonly Choice[]; ahead: readonly UnfitFile[] };

interface Read {
  file: ExportedFile;
  read: TableRead;
}

/** The file once more, its numbers and dates judged by the columns whose meaning is known, as `run` will judge them. */
function judgedAgain({ file, read }: Read, of: RecognisedFile): { of: RecognisedFile; doubts: readonly Doubt[] } {
  const typeOf = (index: number) => fieldNamed(of.placed.find((one) => one.index === index)?.term ?? '')?.type;
  const uses = file.header.map((_, index) => [usedAs(undefined, typeOf(index))]);
  const { decimal, dateOrder, doubts } = judgedBy(read, uses, file.missing);
  const open = doubts.filter(({ rule }) => rule.startsWith('decimal-'));
  const told = open.map(({ rule, written = '' }) => {
    const text = rule === 'decimal-open' ? words.doubts.decimalOpen(written) : words.doubts.decimalMixed(written);
    return doubt('decimal mark', text);
  });
  // Where the judge leaves the mark open, the one that the whole file speaks for is kept for what is shown.
  return {
    of: { ...of, file: { ...file, dateOrder, decimal: open.length > 0 ? file.decimal : decimal } },
    doubts: told,
  };
}

/** Everything that stops at the gate, or cannot be read. */
function unfitFiles(
  looked: readonly Looked[],
  recognised: ReadonlyMap<string, RecognisedFile>,
  isReviewed: (header: string) => boolean,
): readonly UnfitFile[] {
  return looked.flatMap((one): readonly UnfitFile[] => {
    if (one.kind === 'unfit') return [one];
    const of = recognised.get(one.file.file);
    const fieldOf = (index: number) => of?.placed.find((placed) => placed.index === index)?.term;
    const findings = gate(one.read, fieldOf, isReviewed);
    return findings.length > 0 ? [{ file: one.file.file, label: one.file.label, findings }] : [];
  });
}

/** Columns that a former audit declares safe. */
function reviewedBefore({ former }: ProposeOptions): (header: string) => boolean {
  const headers = new Set(former?.plan.identifiers_reviewed.map(({ column }) => foldedHeader(column)));
  return (header) => headers.has(foldedHeader(header));
}

type Draw = (found: Known, answers: Answers) => Proposal;

/** Asks choice after choice; what an answer changes is known before the next question. */
async function answersTo(recognised: readonly RecognisedFile[], ask: Ask, draw: Draw): Promise<Answers> {
  const answers = new Map<string, string>();
  const asked = new Set<string>();
  for (;;) {
    const found = known(recognised, answers);
    const choices = choicesOf(found);
    const next = choices.find(({ id }) => !asked.has(id));
    if (!next) return answers;
    const answer = await ask(next, asked.size + 1, choices.length, draw(found, answers));
    asked.add(next.id);
    if (answer !== undefined) answers.set(next.id, answer);
  }
}

/** Every file that can be read, with what its columns are. */
async function lookInto(paths: readonly string[], options: ProposeOptions, io: Io, say: Say) {
  const files = await filesOfSource(0, paths, io);
  let [done, total] = [0, 0];
  for (const { path } of files) total += 2 * ((await io.stat(path))?.bytes ?? 0);
  const looked = await lookAt(files, io, (bytes) => {
    done += bytes;
    say('propose', done, total);
  });
  const read = looked.filter((one) => one.kind === 'file');
  const recognised = read.map((one) => {
    const of = recognise(one.file);
    const source = options.former && sourceLike(of, options.former.plan);
    return { one, of: source ? asBefore(of, source) : of, source };
  });
  const byFile = new Map(recognised.map(({ of }) => [of.file.file, of]));
  return { recognised, unfit: unfitFiles(looked, byFile, reviewedBefore(options)) };
}

/** Where a run of what is proposed would still stop; nothing where its text has faults, which a run tells first. */
function aheadOf({ text }: Proposal, read: readonly Read[]): readonly UnfitFile[] {
  const planned = planFrom(text);
  if ('faults' in planned) return [];
  const files = read.map(({ file: { file, label }, read: table }) => ({ file, label, read: table }));
  return stopsAhead(planned.plan, files).map(({ file, label, finding }) => ({ file, label, findings: [finding] }));
}

/**
 * Looks at exports and proposes an audit.yaml for them; nothing is written.
 *
 * @param paths    files, or patterns with *, from the folder that audit.yaml is written to
 * @param options  `ask` puts choices to somebody; left out, the likelier is taken and what nothing tells stays open
 */
export async function proposeAudit(
  paths: readonly string[],
  options: ProposeOptions,
  io: Io,
  say: Say,
): Promise<ProposeOutcome> {
  const { recognised, unfit } = await lookInto(paths, options, io, say);
  if (unfit.length > 0) return { kind: 'unfit', files: unfit };
  const { ask, former, outside = false } = options;
  const carried = recognised.flatMap(({ of, source }) => (source ? [{ of, source }] : []));
  const fresh = recognised.filter(({ source }) => !source).map(({ one, of }) => judgedAgain(one, of));
  const reading = new Map(fresh.map(({ of, doubts }) => [of.file.file, doubts]));
  const draw: Draw = (found, answers) =>
    former
      ? likeProposal(former, carried, sourcesOf(found, answers, reading), outside)
      : proposalOf(found, answers, reading, outside);
  const files = fresh.map(({ of }) => of);
  const answers = ask ? await answersTo(files, ask, draw) : new Map<string, string>();
  const found = known(files, answers);
  const proposal = draw(found, answers);
  if (carried.length === 0 && found.files.every(({ arranged }) => arranged.lacks)) return { kind: 'nothing', proposal };
  const open = choicesOf(found).filter((choice) => settled(choice, answers) === undefined);
  return {
    kind: 'proposed',
    proposal,
    open,
    ahead: aheadOf(
      proposal,
      recognised.map(({ one }) => one),
    ),
  };
}
