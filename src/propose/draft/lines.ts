import { quoted } from '../../plan/repair.js';
import { wrapped } from '../../screens/layout.js';
import type { Doubt } from './doubt.js';

/** One line of audit.yaml, with what stands above and behind it. */
export interface YamlLine {
  /** Levels of two blanks. */
  depth: number;
  /** '' for a comment alone. */
  text: string;
  /** Behind the line. */
  comment?: string;
  /** Above it, each marked as a doubt. */
  doubts?: readonly Doubt[];
  /** Above it, plain. */
  notes?: readonly string[];
  /** Whether the line says nothing until somebody takes its # away. */
  off?: boolean;
}

/** Columns of a comment line. */
const commentWidth = 100;
/** Where comments behind lines begin at the latest. */
const latestComment = 56;

const plain = /^[\p{L}\d](?:[\p{L}\d ._%/°²+()-]*[\p{L}\d._%/°²+)])?$/u;

/**
 * A text as audit.yaml takes it: in quotation marks where a sign in it would mean something.
 *
 * @example yamlText('Op: R') // '"Op: R"'
 */
export function yamlText(text: string): string {
  const single = text.replace(/\s+/g, ' ').trim();
  return plain.test(single) ? single : quoted(single);
}

/** A list in one line. */
export function yamlList(words: readonly string[]): string {
  return `[${words.map(yamlText).join(', ')}]`;
}

/** Keys and values that are written already, in one line. */
export function yamlBraces(entries: readonly (readonly [key: string, value: string])[]): string {
  return `{ ${entries.map(([key, value]) => `${key}: ${value}`).join(', ')} }`;
}

/**
 * A mapping of columns. Where every line of it is a comment it is written as an empty one: nothing behind a colon would
 * not be read.
 */
export function columnsMapping(depth: number, lines: readonly YamlLine[], emptied: string): readonly YamlLine[] {
  if (lines.some(({ text, off }) => text !== '' && !off)) return [{ depth, text: 'columns:' }, ...lines];
  return [{ depth, text: 'columns: {}', ...(lines.length > 0 && { comment: emptied }) }, ...lines];
}

/** A text in comment lines, with its mark. */
function commentLines(text: string, depth: number, mark = ''): readonly string[] {
  const head = `${'  '.repeat(depth)}# `;
  const lines = wrapped(mark + text, commentWidth - head.length);
  return lines.map((line, at) => head + (at > 0 && mark ? '  ' : '') + line);
}

function codeOf({ depth, text, off }: YamlLine): string {
  const code = '  '.repeat(depth) + text;
  return off && text !== '' ? code.replace(/^( *)/, '$1# ') : code;
}

/** Lines of one block, comments behind them one below the other. */
function blockText(lines: readonly YamlLine[]): readonly string[] {
  const commented = lines.filter(({ comment }) => comment);
  const longest = Math.max(
    0,
    ...commented.map((line) => codeOf(line).length).filter((length) => length < latestComment),
  );
  return lines.flatMap((line) => {
    const code = codeOf(line);
    const above = [
      ...(line.notes ?? []).flatMap((note) => commentLines(note, line.depth)),
      ...(line.doubts ?? []).flatMap(({ text }) => commentLines(text, line.depth, 'doubt: ')),
    ];
    if (line.text === '') return above;
    return [...above, line.comment ? `${code.padEnd(longest)}   # ${line.comment.replace(/\s+/g, ' ')}` : code];
  });
}

/** The text of audit.yaml: sections with a blank line between them. */
export function yamlOf(sections: readonly (readonly YamlLine[])[]): string {
  const filled = sections.filter((lines) => lines.length > 0);
  return `${filled.map((lines) => blockText(lines).join('\n')).join('\n\n')}\n`;
}
