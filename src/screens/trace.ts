import type { Words } from '../words/index.js';
import { labelled, screen, screenWidth, wrapped } from './layout.js';

/** One step on the way from a cell to a number. */
export interface TraceLine {
  label: string;
  value: string;
  /** Where the value stands, its formula, the formula with its numbers: one paragraph each. */
  notes: readonly string[];
}

export interface TraceBlock {
  title: string;
  lines: readonly TraceLine[];
}

/** One eye from raw cells to every number it enters. */
export interface TraceText {
  title: string;
  blocks: readonly TraceBlock[];
}

/** Column where values begin; a longer label pushes its value on. */
const valueAt = 38;
/** Indent of the notes. */
const noteAt = 6;

/** The screen of one eye's trace. */
export function traceScreen(trace: TraceText, audit: string, words: Words['screens']): string {
  return screen([
    wrapped(trace.title),
    ...trace.blocks.map((block) => [`  ${block.title}`, ...block.lines.flatMap(traceLine)]),
    labelled(words.next, words.trace.next(audit), { indent: 0, at: 7 }),
  ]);
}

/** Label and value side by side; each note below, its own continuation set in. */
function traceLine({ label, value, notes }: TraceLine): readonly string[] {
  const head = value === '' ? wrapped(label, screenWidth, 4) : labelled(label, value, { indent: 4, at: valueAt });
  return [...head, ...notes.flatMap(note)];
}

function note(text: string): readonly string[] {
  const [first = '', ...rest] = wrapped(text, screenWidth - 2, noteAt);
  return [first, ...rest.map((line) => `  ${line}`)];
}

/** The screen of an eye that the audit does not have. */
export function noEyeScreen(
  { patient, eye }: { patient: string; eye: string },
  audit: string,
  words: Words['screens'],
): string {
  return screen([
    wrapped(words.trace.noEye(patient, eye)),
    labelled(words.next, words.trace.nextNoEye(audit), { indent: 0, at: 7 }),
  ]);
}
