import type { Words } from '../words/index.js';
import { labelled, screen, screenWidth, wrapped } from './layout.js';

/** One step on the way from a cell to a number. */
export interface TraceLine {
  label: string;
  value: string;
  /** Formula, or where the value stands; '' none. */
  note: string;
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

/** Columns where values and notes begin; longer texts push them on. */
const valueAt = 23;
const noteAt = 49;

/** The screen of one eye's trace. */
export function traceScreen(trace: TraceText, audit: string, words: Words['screens']): string {
  return screen([
    wrapped(trace.title),
    ...trace.blocks.map((block) => [`  ${block.title}`, ...block.lines.flatMap(traceLine)]),
    labelled(words.next, words.trace.next(audit), { indent: 0, at: 7 }),
  ]);
}

/** Label, value and note side by side where they fit; the note runs on below, beside nothing else. */
function traceLine({ label, value, note }: TraceLine): readonly string[] {
  const [first = '', ...rest] = labelled(label, value, { indent: 4, at: valueAt });
  const last = rest.at(-1) ?? first;
  if (note === '') return [first, ...rest];
  const beside = last.length + 2 <= noteAt ? last.padEnd(noteAt) : `${last}  `;
  const joined = beside + note;
  const before = rest.length > 0 ? [first, ...rest.slice(0, -1)] : [];
  if (joined.length <= screenWidth) return [...before, joined];
  return [first, ...rest, ...wrapped(note, screenWidth, valueAt + 2)];
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
