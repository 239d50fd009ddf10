import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import type { DateOrder } from '../src/intake/date.js';
import type { SizeQuestion } from '../src/screens/size.js';
import { en } from '../src/words/index.js';
import type { DrawOptions } from './commands/draw.js';
import { untilInterrupted } from './commands/interrupt.js';
import type { ExitCode, Options, Reply } from './commands/reply.js';
import type { SizeOptions } from './commands/size.js';
import type { Request } from './deidentify/request.js';
import type { Say } from './io.js';
import { version } from './publish/version.js';
import { emphasised, progressOn } from './terminal.js';

/** A command's work, given what it needs of the terminal. Its packages are imported when it is called. */
type Work = (say: Say, signal: AbortSignal) => Promise<Reply>;

const { help } = en.screens;
const { help: asking } = en.proposeScreens;
const { help: copying } = en.deidentify;

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

function dateOrder(text: string): DateOrder {
  if (text === 'day-first' || text === 'month-first' || text === 'year-first') return text;
  throw new InvalidArgumentError(copying.orders);
}

/** Gathers an option that may be given more than once. */
const gathered = (text: string, former: readonly string[]): readonly string[] => [...former, text];

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

  withShared(all.command('propose').description(asking.propose).argument('<files...>', asking.files))
    .option('--yes', asking.yes, false)
    .option('--like <audit>', asking.like)
    .option('--out <path>', asking.out)
    .action(async (files: string[], options: Options & { yes: boolean; like?: string; out?: string }) => {
      const { propose } = await import('./commands/propose.js');
      const asks = !options.yes && !options.quiet && !options.json && process.stdin.isTTY && process.stdout.isTTY;
      const terminal = (signal: AbortSignal) => ({ input: process.stdin, output: process.stdout, signal });
      await perform(
        (say, signal) => propose(files, options, asks ? terminal(signal) : undefined, say, signal),
        options,
      );
    });
  withShared(all.command('deidentify').description(copying.about).argument('<files...>', copying.files))
    .requiredOption('--codebook <book>', copying.codebook)
    .requiredOption('--out <folder>', copying.out)
    .option('--patient <column>', copying.patient, gathered, [])
    .option('--surgery-date <column>', copying.surgeryDate, gathered, [])
    .option('--date-order <order>', copying.dateOrder, dateOrder)
    .option('--keep <column>', copying.keep, gathered, [])
    .option('--no-order', copying.noOrder)
    .option('--yes', copying.yes, false)
    .action(async (files: string[], options: Options & Omit<Request, 'files'>) => {
      const { deidentify } = await import('./commands/deidentify.js');
      const asks = !options.yes && !options.quiet && !options.json && process.stdin.isTTY && process.stdout.isTTY;
      const terminal = (signal: AbortSignal) => ({ input: process.stdin, output: process.stdout, signal });
      await perform(
        (say, signal) => deidentify({ ...options, files }, asks ? terminal(signal) : undefined, say, signal),
        options,
      );
    });
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
  addDraw(all);
  addSize(all);
  return all;
}

/** `draw`: one figure again, in another way. */
function addDraw(all: Command): void {
  const { help: about } = en.draw;
  withShared(all.command('draw').description(about.about).argument('<audit>', help.audit))
    .argument('<figure>', about.figure)
    .option('--artwork <profile>', about.artwork)
    .option('--width <mm>', about.width, numberFrom(40, 1000))
    .addOption(new Option('--format <form...>', about.format).choices(['svg', 'png', 'pdf', 'tiff']))
    .option('--cohort <name>', about.cohort, gathered, [])
    .addOption(new Option('--palette <colours>', about.palette).choices(['colour', 'okabe-ito', 'grey']))
    .action(async (audit: string, figure: string, options: Options & DrawOptions) => {
      const { draw } = await import('./commands/draw.js');
      await perform((say, signal) => draw(audit, figure, options, say, signal), options);
    });
}

/** A number within limits; anything else is a wrong word of the command. */
function numberFrom(from: number, to: number): (text: string) => number {
  return (text) => {
    const value = Number(text.replace(',', '.'));
    if (text.trim() !== '' && value >= from && value <= to) return value;
    throw new InvalidArgumentError(en.size.number(String(from), String(to)));
  };
}

const percentage = numberFrom(0, 100);
const positive = numberFrom(1e-6, 1e6);

/** `size`: one command a kind of comparison; they read no file. */
function addSize(all: Command): void {
  const { options: about } = en.size;
  const parent = all.command('size').description(en.size.about).helpCommand(false);
  const kind = (name: SizeQuestion['of'], text: string): Command =>
    withShared(parent.command(name).description(text))
      .option('--eyes <n>', about.eyes, numberFrom(2, 1e9))
      .option('--both-eyes <percent>', about.bothEyes, percentage, 0)
      .option('--correlation <r>', about.correlation, numberFrom(0, 1), 0)
      .option('--loss <percent>', about.loss, numberFrom(0, 99), 0)
      .option('--power <percent>', about.power, numberFrom(50, 99.9), 80)
      .option('--confidence <percent>', about.confidence, numberFrom(50, 99.99), 95)
      .action(async (options: Options & SizeOptions & Record<string, number>) => {
        const { size } = await import('./commands/size.js');
        await perform(async () => size({ of: name, ...options } as unknown as SizeQuestion, options), options);
      });
  kind('share', en.size.share)
    .requiredOption('--from <percent>', about.from, percentage)
    .requiredOption('--to <percent>', about.to, percentage);
  kind('mean', en.size.mean)
    .requiredOption('--difference <d>', about.difference, positive)
    .requiredOption('--sd <s>', about.sd, positive);
  kind('spread', en.size.spread)
    .requiredOption('--ratio <r>', about.ratio, numberFrom(1.0001, 100))
    .option('--kurtosis <k>', about.kurtosis, numberFrom(1.0001, 1000), 3);
  kind('margin', en.size.margin)
    .requiredOption('--share <percent>', about.share, percentage)
    .requiredOption('--margin <points>', about.margin, numberFrom(0.01, 100));
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
