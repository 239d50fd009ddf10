import type { Words } from '../words/index.js';
import { aligned, cut, labelled, screen, screenWidth, wrapped } from './layout.js';

/** One column, or file, that is told about. */
interface ColumnNote {
  header: string;
  text: string;
}

/** What became of one file; numbers are typeset. */
export interface LookedFile {
  file: string;
  rows: string;
  how: string;
  placed: number;
  columns: number;
  unsure: readonly ColumnNote[];
  left: readonly ColumnNote[];
  /** Where it was carried over from; '' where it was looked at anew. */
  note: string;
}

export interface LookedSummary {
  files: number;
  filesText: string;
  rows: string;
  each: readonly LookedFile[];
}

export interface ProposedSummary {
  audit: string;
  schema: string;
  lines: string;
  doubts: number;
  doubtsText: string;
  /** Choices that stay open. */
  open: readonly { place: string; found: string }[];
  /** What else has to be said of the audit as a whole. */
  notes: readonly string[];
}

/** One question: what was found, and what speaks for each answer. */
export interface QuestionText {
  number: number;
  of: number;
  place: string;
  found: string;
  options: readonly { value: string; text: string }[];
  likelier: string | undefined;
}

type Text = Words['proposeScreens'];

/** Notes on columns that a screen shows of one file; the file written holds them all. */
const mostNotes = 6;

/** Where the words beside "unsure" and "left" begin. */
const noteAt = 15;

/** Notes in groups of the same words, which are told once behind the headers they are about. */
function alike(notes: readonly ColumnNote[]): readonly (readonly ColumnNote[])[] {
  const texts = [...new Set(notes.map(({ text }) => text))];
  return texts.map((text) => notes.filter((note) => note.text === text));
}

/** The headers that one note is about, the first of many. */
function headersText(notes: readonly ColumnNote[], text: Text): string {
  const headers = notes.map(({ header }) => text.about(header)).filter((header) => header !== '');
  const shown = headers.slice(0, mostNotes);
  return [...shown, ...(headers.length > shown.length ? [text.more(headers.length - shown.length)] : [])].join(', ');
}

function noteLines(name: string, all: readonly ColumnNote[], text: Text): readonly string[] {
  const notes = alike(all);
  const shown = notes.slice(0, mostNotes);
  const lines = shown.flatMap((group, at) =>
    labelled(
      at === 0 ? name : ' '.repeat(name.length),
      [headersText(group, text), group[0]?.text ?? ''].filter((part) => part !== '').join(': '),
      {
        indent: 6,
        at: noteAt,
      },
    ),
  );
  return notes.length > shown.length
    ? [...lines, `${' '.repeat(noteAt)}${text.more(notes.length - shown.length)}`]
    : lines;
}

function fileLines({ placed, columns, unsure, left, note }: LookedFile, head: string, text: Text): readonly string[] {
  return [
    cut(head, screenWidth),
    ...wrapped([text.placed(placed, columns), note].filter((part) => part !== '').join('; '), screenWidth, 6),
    ...noteLines(text.unsure, unsure, text),
    ...noteLines(text.left, left, text),
  ];
}

function lookedBlocks(summary: LookedSummary, text: Text): readonly (readonly string[])[] {
  const heads = aligned(
    summary.each.map(({ file, rows, how }) => [file, text.rows(rows), how]),
    { right: [1] },
  );
  const files = summary.each.flatMap((one, at) => fileLines(one, heads[at] ?? '', text));
  return [wrapped(text.looked(summary.files, summary.filesText, summary.rows)), files];
}

/** What is shown before questions are asked. */
export function lookedScreen(summary: LookedSummary, questions: number, words: Words): string {
  const text = words.proposeScreens;
  return `${screen([...lookedBlocks(summary, text), [text.questions(questions)]])}\n`;
}

/** One question with the evidence for each answer; the cursor stays behind the last line. */
export function questionScreen({ number, of, place, found, options, likelier }: QuestionText, words: Words): string {
  const text = words.proposeScreens;
  const head = text.question(number, of);
  const at = head.length + 4;
  const width = Math.max(...options.map(({ value }) => value.length)) + 2;
  const lines = [
    ...labelled(head, `${place}: ${found}.`.replace(/^: /, ''), { at }),
    ...options.flatMap(({ value, text: about }) => labelled(value, about, { indent: at, at: at + width })),
  ];
  const prompt = text.prompt(
    options.map(({ value }) => value),
    likelier,
  );
  return `${lines.join('\n')}\n${' '.repeat(at)}${prompt}`;
}

function proposedBlocks(
  { audit, schema, lines, doubts, doubtsText, open, notes }: ProposedSummary,
  words: Words,
): readonly (readonly string[])[] {
  const text = words.proposeScreens;
  const marked = doubts === 0 ? '' : doubts === 1 ? text.oneDoubt : text.doubts(doubtsText);
  const openLines = open.flatMap(({ place, found }) =>
    wrapped(`${place}: ${found}`.replace(/^: /, ''), screenWidth, 4),
  );
  return [
    [
      ...wrapped([text.wrote(audit, lines, schema), marked].filter((part) => part !== '').join(' ')),
      ...(open.length > 0 ? [`  ${text.open(open.length)}`, ...openLines] : []),
      ...notes.flatMap((note) => wrapped(note, screenWidth, 2)),
    ],
    labelled(words.screens.next, text.next(audit), { indent: 0, at: 7 }),
  ];
}

/** The screen of a proposal: what was seen in each file, unless it was shown already, and what was written. */
export function proposedScreen(looked: LookedSummary | undefined, summary: ProposedSummary, words: Words): string {
  const seen = looked ? lookedBlocks(looked, words.proposeScreens) : [];
  return screen([...seen, ...proposedBlocks(summary, words)]);
}

/** The screen of a command that would overwrite an audit. @param command  that writes elsewhere */
export function existsScreen(audit: string, command: string, words: Words): string {
  const text = words.proposeScreens;
  return screen([wrapped(text.exists(audit)), labelled(words.screens.next, command, { indent: 0, at: 7 })]);
}

/** One reason why nothing is proposed. */
export interface UnfitReason {
  place: string;
  sentence: string;
  do: string;
}

/** The screen of files that cannot be used as they are. @param next  what to do about all of them */
export function unfitScreen(title: string, reasons: readonly UnfitReason[], next: string, words: Words): string {
  return screen([
    wrapped(title),
    reasons.flatMap(({ place, sentence, do: act }) => [
      ...wrapped(`${place}: ${sentence}`, screenWidth, 2),
      ...(act === '' ? [] : labelled(words.screens.stopped.do, act, { indent: 4, at: 8 })),
    ]),
    labelled(words.screens.next, next, { indent: 0, at: 7 }),
  ]);
}

/** The screen of files of which none names patient and eye. */
export function nothingScreen(looked: LookedSummary, words: Words): string {
  const text = words.proposeScreens;
  return screen([
    wrapped(text.nothing),
    ...lookedBlocks(looked, text).slice(1),
    labelled(words.screens.next, text.nextNothing, { indent: 0, at: 7 }),
  ]);
}
