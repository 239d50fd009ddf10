import { Command, CommanderError, InvalidArgumentError } from 'commander';
import { en } from '../src/words/index.js';
import { untilInterrupted } from './commands/interrupt.js';
import type { ExitCode, Options, Reply } from './commands/reply.js';
import type { Say } from './io.js';
import { version } from './publish/version.js';
import { emphasised, progressOn } from './terminal.js';

/** A command's work, given what it needs of the terminal. Its packages are imported when it is called. */
type Work = (say: Say, signal: AbortSignal) => Promise<Reply>;

const { help } = en.screens;

/** Shows what a command has to say: what was asked for on stdout, all else on stderr. */
function show({ code, screen, data }: Reply, { quiet, json }: Options): void {
  if (json) process.stdout.write(`${JSON.stringify(data)}\n`);
  if (code !== 0) process.stderr.write(emphasised(screen, process.stderr));
  else if (!json && !quiet) process.stdout.write(emphasised(screen, process.stdout));
}

async function attempt(work: Work, options: Options): Promise<Reply> {
  const progress = options.quiet ? undefined : progressOn(process.stderr, en.screens.stages);
  try {
    return await untilInterrupted((signal) => work(progress?.say ?? (() => {}), signal));
  } catch (error) {
    return (await import('./commands/failure.js')).failureReply(error);
  } finally {
    progress?.clear();
  }
}

async function perform(work: Work, options: Options): Promise<void> {
  const reply = await attempt(work, options);
  show(reply, options);
  process.exitCode = reply.code;
}

/** Seconds since the process started. */
const elapsed = (): number => performance.now() / 1000;

function side(text: string): 'right' | 'left' {
  if (text === 'right' || text === 'left') return text;
  throw new InvalidArgumentError(help.sides);
}

function withShared(command: Command): Command {
  return command.option('--quiet', help.quiet, false).option('--json', help.json, false);
}

function program(): Command {
  const all = new Command('halfdiopter')
    .description(help.description)
    .version(version, '--version', help.version)
    .helpOption('--help', help.help)
    .helpCommand(false)
    .addHelpText('after', `\n${help.flow}`)
    .showHelpAfterError(`${en.screens.next}   ${en.screens.usage}`)
    .exitOverride();
  const command = (usage: string, about: string): Command =>
    withShared(all.command(usage).description(about).argument('<audit>', help.audit));

  command('run', help.run)
    .option('--replace', help.replace, false)
    .action(async (audit: string, options: Options & { replace: boolean }) => {
      const { run } = await import('./commands/run.js');
      await perform((say, signal) => run(audit, options, say, signal, elapsed), options);
    });
  command('check', help.check).action(async (audit: string, options: Options) => {
    const { check } = await import('./commands/check.js');
    await perform((say, signal) => check(audit, say, signal), options);
  });
  command('trace', help.trace)
    .requiredOption('--patient <code>', help.patient)
    .requiredOption('--eye <side>', help.eye, side)
    .action(async (audit: string, options: Options & { patient: string; eye: 'right' | 'left' }) => {
      const { trace } = await import('./commands/trace.js');
      await perform((say, signal) => trace(audit, options, say, signal), options);
    });
  return all;
}

/** A reader that closes the pipe early (such as `head`) has seen enough. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  throw error;
});

/** Commander ends with 1 where a word is wrong; 1 is the data's, 2 is "could not start". */
function usageCode(error: CommanderError): ExitCode {
  return error.exitCode === 0 ? 0 : 2;
}

async function fail(error: unknown): Promise<void> {
  if (error instanceof CommanderError) {
    process.exitCode = usageCode(error);
    return;
  }
  const { failureReply } = await import('./commands/failure.js');
  const reply = failureReply(error);
  show(reply, { quiet: false, json: false });
  process.exitCode = reply.code;
}

/** What is thrown outside every command's work would end with 1 by default and look like "stopped by the data". */
process.on('uncaughtException', (error) => void fail(error).then(() => process.exit()));

try {
  await program().parseAsync();
} catch (error) {
  await fail(error);
}
