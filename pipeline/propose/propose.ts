import type { FindingParts } from '../../src/findings/builder.js';
import { fieldNamed } from '../../src/plan/fields.js';
import type { Answers, Choice } from '../../src/propose/choices.js';
import { type Doubt, doubt } from '../../src/propose/draft/doubt.js';
import type { ExportedFile } from '../../src/propose/exported.js';
import type { RecognisedFile } from '../../src/propose/placed.js';
import { type Proposal, proposalOf } from '../../src/propose/proposal.js';
import { recognise } from '../../src/propose/recognise.js';
import { choicesOf, type Known, known } from '../../src/propose/survey.js';
import { propose as words } from '../../src/words/en/propose.js';
import { filesOfSource } from '../ingest/files.js';
import type { TableRead } from '../ingest/read-table.js';
import type { Io, Say } from '../io.js';
import { gate, judgedBy, type Looked, lookAt, usedAs } from './look.js';

/** What keeps a file from being proposed for: it cannot be read, or it identifies persons. */
export interface UnfitFile {
  file: string;
  label: string;
  findings: readonly FindingParts[];
}

/** Puts one choice to somebody. @returns the value chosen; '' leaves it open; undefined takes what the data say */
export type Ask = (choice: Choice, number: number, of: number, seen: Proposal) => Promise<string | undefined>;

export type ProposeOutcome =
  | { kind: 'unfit'; files: readonly UnfitFile[] }
  /** No file says whom and which eye its rows are of. */
  | { kind: 'nothing'; proposal: Proposal }
  | { kind: 'proposed'; proposal: Proposal; open: readonly Choice[] };

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

/** Asks choice after choice; what an answer changes is known before the next question. */
async function answersTo(
  recognised: readonly RecognisedFile[],
  ask: Ask,
  seen: (found: Known, answers: Answers) => Proposal,
): Promise<Answers> {
  const answers = new Map<string, string>();
  const asked = new Set<string>();
  for (;;) {
    const found = known(recognised, answers);
    const choices = choicesOf(found);
    const next = choices.find(({ id }) => !asked.has(id));
    if (!next) return answers;
    const answer = await ask(next, asked.size + 1, Math.max(choices.length, asked.size + 1), seen(found, answers));
    asked.add(next.id);
    if (answer !== undefined) answers.set(next.id, answer);
  }
}

/**
 * Looks at exports and proposes an audit.yaml for them; nothing is written.
 *
 * @param paths  files, or patterns with *
 * @param ask    puts choices to somebody; left out, the likelier is taken and what nothing tells stays open
 */
export async function proposeAudit(
  paths: readonly string[],
  io: Io,
  ask: Ask | undefined,
  say: Say,
): Promise<ProposeOutcome> {
  const files = await filesOfSource(0, paths, io);
  let [done, total] = [0, 0];
  for (const { path } of files) total += 2 * ((await io.stat(path))?.bytes ?? 0);
  const looked = await lookAt(files, io, (bytes) => {
    done += bytes;
    say('propose', done, total);
  });
  const read = looked.filter((one) => one.kind === 'file');
  const first = new Map(read.map((one) => [one.file.file, recognise(one.file)]));
  const unfit = unfitFiles(looked, first, () => false);
  if (unfit.length > 0) return { kind: 'unfit', files: unfit };

  const judged = read.map((one) => judgedAgain(one, first.get(one.file.file) as RecognisedFile));
  const reading = new Map(judged.map(({ of, doubts }) => [of.file.file, doubts]));
  const recognised = judged.map(({ of }) => of);
  const seen = (found: Known, answers: Answers) => proposalOf(found, answers, reading);
  const answers = ask ? await answersTo(recognised, ask, seen) : new Map<string, string>();
  const found = known(recognised, answers);
  const proposal = seen(found, answers);
  if (found.files.every(({ arranged }) => arranged.lacks)) return { kind: 'nothing', proposal };
  const open = choicesOf(found).filter(
    ({ id, likelier }) => !answers.get(id) && (likelier === undefined || answers.has(id)),
  );
  return { kind: 'proposed', proposal, open };
}
