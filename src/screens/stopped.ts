import type { Words } from '../words/index.js';
import { labelled, screen, screenWidth, wrapped } from './layout.js';

/** One reason to stop, in words. */
export interface StopReason {
  /** 'lane.csv, column "V c.c."'; '' where it concerns the whole audit. */
  place: string;
  sentence: string;
  expected: string;
  do: string;
  /** Lines that audit.yaml may take, one of them to be chosen. */
  lines: readonly string[];
  rule: string;
}

/** What the screen of a stopped command tells. */
export interface StoppedSummary {
  audit: string;
  command: 'run' | 'check' | 'trace' | 'draw';
  /** Whether there is a former report that was left as it was. */
  former: boolean;
  reasons: readonly StopReason[];
  /** All findings, as a file. */
  list: string;
}

/** Reasons that a screen tells in full; the list holds them all. */
const mostReasons = 8;

/** The screen of a command that the data stopped: one block a reason. */
export function stoppedScreen(summary: StoppedSummary, words: Words['screens']): string {
  const { stopped, toRun, toCheck, next } = words;
  const title = summary.command === 'run' ? (summary.former ? stopped.title : stopped.titleFirst) : stopped.titleCheck;
  const command = summary.command === 'run' ? toRun(summary.audit) : toCheck(summary.audit);
  return screen([
    [title],
    ...summary.reasons.slice(0, mostReasons).map((reason) => reasonLines(reason, words)),
    wrapped(`${stopped.reasons(String(summary.reasons.length))} ${stopped.others(summary.list)}`),
    labelled(next, stopped.next(summary.audit, command), { indent: 0, at: 7 }),
  ]);
}

function reasonLines(reason: StopReason, { stopped, rule }: Words['screens']): readonly string[] {
  const parts = [
    { name: stopped.expected, text: reason.expected },
    { name: stopped.do, text: reason.do },
  ].filter(({ text }) => text !== '');
  return [
    ...wrapped(reason.place === '' ? reason.sentence : `${reason.place}: ${reason.sentence}`),
    ...parts.flatMap(({ name, text }) => labelled(name, text, { at: 13 })),
    ...reason.lines.map((line) => `${' '.repeat(15)}${line}`),
    rule(reason.rule).padStart(screenWidth),
  ];
}
