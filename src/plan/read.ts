import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
  visit,
  type YAMLParseError,
} from 'yaml';
import type { Fault } from '../records/plan.js';
import { plan as words } from '../words/en/plan.js';
import type { DocumentNode, MapEntry, Place } from './document.js';
import { type Complaint, quotedLine, type Repair, repair } from './repair.js';

export interface ReadDocument {
  /** Undefined where the file cannot be read as a whole; the faults then say why. */
  root: DocumentNode | undefined;
  faults: readonly Fault[];
}

/** A quoted text that swallows the rest of the file, where there is one. */
function openQuote(document: Document, offset: number): number | undefined {
  let start: number | undefined;
  visit(document, {
    Scalar(_key, { type, range }) {
      if (range && range[1] >= offset && (type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE')) start = range[0];
    },
  });
  return start;
}

/** What yaml makes of the lines. Every scalar is a text: the schema, not the spelling, says what it becomes. */
function parseLines(lines: readonly string[]) {
  const counter = new LineCounter();
  const text = lines.join('\n');
  const document = parseDocument(text, {
    schema: 'failsafe',
    uniqueKeys: false,
    prettyErrors: false,
    lineCounter: counter,
  });
  const place = (offset: number): Place => {
    const { line, col } = counter.linePos(offset);
    return { line, column: col };
  };
  const complaint = ({ code, message, pos: [offset] }: YAMLParseError): Complaint => {
    const quote = code === 'MISSING_CHAR' ? openQuote(document, offset) : undefined;
    if (quote !== undefined) return { code: 'OPEN_QUOTE', ...place(quote) };
    return { code: message.startsWith('Flow ') ? 'OPEN_BRACKET' : code, ...place(offset) };
  };
  return { root: document.contents, complaints: document.errors.map(complaint), place, text };
}

type Parsed = ReturnType<typeof parseLines>;

function slipFault(made: Repair, former: readonly string[]): Fault {
  const { slip, line, column } = made;
  const changed = made.lines.flatMap((text, i) => (text === former[i] ? [] : [i + 1]));
  const at = changed.includes(line) ? line : (changed[0] ?? line);
  return { line: at, column, ...words.slip(slip, made.lines[at - 1] ?? '', changed) };
}

/** One fault a line: what follows on the same line is a consequence of the first. */
function syntaxFaults(complaints: readonly Complaint[]): readonly Fault[] {
  const first = complaints.filter((one, i) => complaints.findIndex((other) => other.line === one.line) === i);
  return first.map(({ code, line, column }) => ({ line, column, ...words.syntax(code) }));
}

interface Context extends Pick<Parsed, 'place' | 'text'> {
  lines: readonly string[];
  faults: Fault[];
}

/** The mark of an anchor, alias or tag, where one stands before the node; '' otherwise. */
function markOf(node: Node): string {
  if (isAlias(node)) return `*${node.source}`;
  return `${node.anchor ? `&${node.anchor} ` : ''}${node.tag ? `${node.tag} ` : ''}`;
}

function tellMark(mark: string, node: Node, { place, text, lines, faults }: Context): void {
  const start = node.range?.[0] ?? 0;
  const at = place(Math.max(0, text.lastIndexOf(mark.charAt(0), start)));
  const isValue = isScalar(node) || isAlias(node);
  faults.push({ ...at, ...words.signAtStart(isValue ? quotedLine(lines[at.line - 1] ?? '', at.column) : undefined) });
}

/** yaml's node as ours; what is not accepted is told and kept as text, so that nothing else is missed. */
function converted(node: Node | null, fallback: Place, context: Context): DocumentNode {
  if (!node) return { kind: 'empty', place: fallback };
  const place = node.range ? context.place(node.range[0]) : fallback;
  const mark = markOf(node);
  if (mark) tellMark(mark, node, context);
  if (isMap<Node, Node | null>(node)) return { kind: 'map', place, entries: entriesFrom(node.items, place, context) };
  if (isSeq<Node>(node))
    return { kind: 'list', place, items: node.items.map((item) => converted(item, place, context)) };
  const text = mark + (isScalar(node) ? String(node.value) : '');
  const empty = text === '' && isScalar(node) && node.type === 'PLAIN';
  return empty ? { kind: 'empty', place } : { kind: 'text', place, text };
}

function entriesFrom(pairs: readonly Pair<Node, Node | null>[], above: Place, context: Context): MapEntry[] {
  const entries: MapEntry[] = [];
  for (const pair of pairs) {
    const key = converted(pair.key, above, context);
    const { place } = key;
    if (key.kind !== 'text') context.faults.push({ ...place, ...words.keyNotText() });
    else if (entries.some((entry) => entry.key === key.text))
      context.faults.push({ ...place, ...words.keyTwice(key.text) });
    else entries.push({ key: key.text, place, value: converted(pair.value, place, context) });
  }
  return entries;
}

/** Whether mending goes forward in the file: what was mended once and is still complained of has no likely meaning. */
function isBehind({ line, column }: Repair, former: Repair | undefined): boolean {
  return !former || line > former.line || (line === former.line && column >= former.end);
}

/**
 * audit.yaml as a document of texts with their places.
 *
 * Slips of writing that have one likely meaning (a tab, a colon without quotation marks) are told and mended
 * in memory, so that the faults behind them are told in the same go; but how far a tab was meant to indent is not
 * guessed.
 */
export function readDocument(text: string): ReadDocument {
  let lines: readonly string[] = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const slips: Fault[] = [];
  let former: Repair | undefined;
  for (;;) {
    const parsed = parseLines(lines);
    const [first] = parsed.complaints;
    if (!first) {
      const context = { ...parsed, lines, faults: [...slips] };
      return { root: converted(parsed.root, { line: 1, column: 1 }, context), faults: context.faults };
    }
    const made = repair(lines, first);
    if (!made || !isBehind(made, former))
      return { root: undefined, faults: [...slips, ...syntaxFaults(parsed.complaints)] };
    slips.push(slipFault(made, lines));
    if (made.slip === 'tabs') return { root: undefined, faults: slips };
    lines = made.lines;
    former = made;
  }
}
