import type { Fault } from '../records/plan.js';
import { plan as words } from '../words/en/plan.js';

interface CommentedLine {
  /** Counted from 1. */
  line: number;
  column: number;
  text: string;
}

const isSourceStart = (line: string): boolean => /^\s*- +file:/.test(line);

/** Lines of this key that stand as comments, as runs of neighbours. */
function commentedRuns(lines: readonly string[], key: string): readonly (readonly CommentedLine[])[] {
  const runs: CommentedLine[][] = [];
  lines.forEach((text, at) => {
    const [, indent, told] = /^(\s*)#\s*(.*)$/.exec(text) ?? [];
    if (indent === undefined || told === undefined || !told.startsWith(`${key}:`)) return;
    const found = { line: at + 1, column: indent.length + 1, text: told.replace(/\s+#.*$/, '') };
    const last = runs.at(-1);
    if (last?.at(-1)?.line === at) last.push(found);
    else runs.push([found]);
  });
  return runs;
}

/** The nearest of the runs that belong to the source in which the key is missing. */
function nearestRun(lines: readonly string[], fault: Fault, key: string): readonly CommentedLine[] {
  const distance = (run: readonly CommentedLine[]): number => Math.abs((run[0]?.line ?? 0) - fault.line);
  const isOfSource = (run: readonly CommentedLine[]): boolean => {
    const [from, to] = [run[0]?.line ?? 0, fault.line].toSorted((a, b) => a - b) as [number, number];
    return !lines.slice(from, to - 1).some(isSourceStart);
  };
  const runs = commentedRuns(lines, key).filter(isOfSource);
  return runs.toSorted((a, b) => distance(a) - distance(b))[0] ?? [];
}

/**
 * Faults over a missing column told where lines for it stand as comments: `propose` leaves them for the reader to choose.
 *
 * @param text  audit.yaml as written
 */
export function pointedToComments(faults: readonly Fault[], text: string): readonly Fault[] {
  const lines = text.split(/\r\n|\r|\n/);
  return faults.map((fault) => {
    const run = fault.lacks === undefined ? [] : nearestRun(lines, fault, fault.lacks);
    const [first] = run;
    if (!first || fault.lacks === undefined) return fault;
    return { line: first.line, column: first.column, ...words.keyCommented(fault.lacks, run) };
  });
}
