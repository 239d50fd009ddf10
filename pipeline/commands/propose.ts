import { basename, dirname, relative } from 'node:path';
import { auditJsonSchema } from '../../src/plan/schema.js';
import type { Former } from '../../src/propose/like-proposal.js';
import type { Proposal } from '../../src/propose/proposal.js';
import { existsScreen, lookedScreen, nothingScreen, proposedScreen, unfitScreen } from '../../src/screens/propose.js';
import { en } from '../../src/words/index.js';
import { fitsPattern } from '../ingest/files.js';
import type { Io, Say } from '../io.js';
import { nodeIo } from '../node-io.js';
import { plan as planFrom } from '../plan.js';
import { askerOn, type Terminal } from '../propose/ask.js';
import { type Ask, type ProposeOutcome, proposeAudit } from '../propose/propose.js';
import { unfitReasons } from '../propose/reasons.js';
import { lookedSummary, proposedSummary, questionText } from '../propose/summary.js';
import { openAudit } from './audit-file.js';
import { haltedReply } from './halted.js';
import { interruptible } from './interrupt.js';
import type { Reply } from './reply.js';

export interface ProposeOptions {
  /** A former audit.yaml whose mapping is carried over. */
  like?: string | undefined;
  /** Folder, or name of the file, to be written. */
  out?: string | undefined;
}

const schemaName = 'audit.schema.json';

/** Where audit.yaml is to be written. */
interface Target {
  folder: string;
  name: string;
  /** As the reader may type it. */
  shown(name: string): string;
}

function targetOf(out: string | undefined): Target {
  const isFile = out !== undefined && /\.ya?ml$/i.test(out);
  const folder = out === undefined ? '.' : isFile ? dirname(out) : out.replace(/[\\/]+$/, '') || out;
  const shown = (name: string): string => (folder === '.' ? name : `${folder.replaceAll('\\', '/')}/${name}`);
  return { folder, name: isFile ? basename(out) : 'audit.yaml', shown };
}

/** Whether a path leaves the folder that audit.yaml is written to. */
const isOutside = (path: string): boolean => /^(?:\.\.(?:\/|$)|\/|[a-z]:)/i.test(path);

/** Files as they were typed, for a command that the reader may copy. */
const typedFiles = (files: readonly string[]): string =>
  files.map((file) => (/\s/.test(file) ? `"${file}"` : file)).join(' ');

/** A name for an audit beside one that is there: the first that is free. */
async function freeName({ name }: Target, io: Io): Promise<string> {
  for (let n = 2; ; n++) {
    const other = name.replace(/(\.ya?ml)$/i, `-${n}$1`);
    if (!(await io.stat(other))) return other;
  }
}

async function existsReply(files: readonly string[], target: Target, io: Io): Promise<Reply> {
  const command = en.proposeScreens.nextExists(typedFiles(files), target.shown(await freeName(target, io)));
  const audit = target.shown(target.name);
  return {
    code: 2,
    screen: existsScreen(audit, command, en),
    data: { outcome: 'not started', reason: 'exists', audit },
  };
}

/** The former audit, or why it cannot be carried over. */
async function formerOf(like: string, signal: AbortSignal): Promise<Former | Reply> {
  const audit = await openAudit(like, signal);
  if ('code' in audit) return audit;
  const planned = planFrom(audit.text);
  if ('faults' in planned) return haltedReply({ kind: 'faults', faults: planned.faults }, audit, 'check');
  return { text: audit.text, plan: planned.plan, fits: fitsPattern };
}

function unfitReply({ files }: Extract<ProposeOutcome, { kind: 'unfit' }>, typed: readonly string[]): Reply {
  const text = en.proposeScreens;
  const rules = files.flatMap(({ findings }) => findings.map(({ rule }) => rule));
  const reasons = unfitReasons(files, en);
  const missing = rules.includes('file-missing');
  const next = rules.includes('identifier-present') ? text.nextIdentifiers(typedFiles(typed)) : text.nextUnfit;
  const title = missing ? text.noFiles : text.unfit(reasons.length);
  const data = {
    outcome: missing ? 'not started' : 'stopped',
    reasons: reasons.map((one, at) => ({ ...one, rule: rules[at] })),
  };
  return { code: missing ? 2 : 1, screen: unfitScreen(title, reasons, next, en), data };
}

/** The same for programs. */
function proposedData({ files, doubts }: Proposal, audit: string, open: number): Reply['data'] {
  return {
    outcome: 'proposed',
    audit,
    files: files.map(({ file, placed, left }) => ({
      file: file.label,
      rows: file.rows,
      placed,
      columns: file.header.length,
      left: left.map(({ header }) => header),
    })),
    doubts: doubts.map(({ kind, header }) => ({ kind, header })),
    open,
  };
}

/** Questions at a terminal, and whether any was asked: what was seen in the files is then shown already. */
function asking(terminal: Terminal | undefined): { ask: Ask | undefined; hasAsked(): boolean; close(): void } {
  if (!terminal) return { ask: undefined, hasAsked: () => false, close: () => {} };
  const asker = askerOn(terminal, en);
  let asked = false;
  const ask: Ask = (choice, number, of, seen) => {
    if (!asked) asker.show(lookedScreen(lookedSummary(seen, en), of, en));
    asked = true;
    return asker.ask(questionText(choice, number, of, en));
  };
  return { ask, hasAsked: () => asked, close: asker.close };
}

async function write(proposal: Proposal, target: Target, io: Io): Promise<void> {
  const encoder = new TextEncoder();
  await io.write(target.name, encoder.encode(proposal.text));
  await io.write(schemaName, encoder.encode(`${JSON.stringify(auditJsonSchema(), null, 2)}\n`));
}

function nothingReply(proposal: Proposal): Reply {
  const data = { outcome: 'stopped', reason: 'no key' };
  return { code: 1, screen: nothingScreen(lookedSummary(proposal, en), en), data };
}

/** Writes what was proposed, and says so. @param shown  whether what was seen has been shown before a question */
async function proposedReply(
  outcome: Extract<ProposeOutcome, { kind: 'proposed' }>,
  target: Target,
  io: Io,
  shown: boolean,
): Promise<Reply> {
  const { proposal, open } = outcome;
  await write(proposal, target, io);
  const audit = target.shown(target.name);
  const summary = proposedSummary(outcome, audit, target.shown(schemaName), en);
  const screen = proposedScreen(shown ? undefined : lookedSummary(proposal, en), summary, en);
  return { code: 0, screen, data: proposedData(proposal, audit, open.length) };
}

/**
 * `propose FILE…`: writes a commented audit.yaml for exports.
 *
 * @param terminal  where questions are asked; undefined takes the likelier answers
 */
export async function propose(
  files: readonly string[],
  options: ProposeOptions,
  terminal: Terminal | undefined,
  say: Say,
  signal: AbortSignal,
): Promise<Reply> {
  const target = targetOf(options.out);
  const io = interruptible(nodeIo(target.folder), signal);
  if (await io.stat(target.name)) return existsReply(files, target, io);
  const former = options.like === undefined ? undefined : await formerOf(options.like, signal);
  if (former && 'code' in former) return former;

  const paths = files.map((file) => relative(target.folder, file).replaceAll('\\', '/'));
  const { ask, hasAsked, close } = asking(terminal);
  try {
    const outcome = await proposeAudit(paths, { ask, former, outside: paths.some(isOutside) }, io, say);
    if (outcome.kind === 'unfit') return unfitReply(outcome, files);
    return outcome.kind === 'nothing'
      ? nothingReply(outcome.proposal)
      : await proposedReply(outcome, target, io, hasAsked());
  } finally {
    close();
  }
}
