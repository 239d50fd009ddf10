import type { ColumnRecord } from '../deidentify/copy.js';
import { removed } from '../deidentify/harmless.js';
import { cellsRemoved, datesWithoutSurgery, type FileRecord, type RunRecord } from '../deidentify/run-record.js';
import { count } from '../format/number.js';
import type { Words } from '../words/index.js';
import { aligned, cut, labelled, screen, screenWidth, wrapped } from './layout.js';

/** Where copies, record and book went, as the reader may type it. */
export interface DeidentifiedPlaces {
  book: string;
  record: string;
  /** All copies, as a pattern. */
  copies: string;
}

/** Columns that a screen tells of one file; the record holds them all. */
const mostColumns = 8;

/** Where the words beside "turned" and "left out" begin. */
const noteAt = 16;

const isLeftOut = ({ role }: ColumnRecord): boolean => role.kind === 'left-out';
const isSame = ({ role }: ColumnRecord): boolean => ['numbers', 'labels', 'reviewed', 'age'].includes(role.kind);

function noteLines(name: string, notes: readonly string[], words: Words): readonly string[] {
  const text = words.deidentify;
  const shown = notes.slice(0, mostColumns);
  const lines = shown.flatMap((note, at) =>
    labelled(at === 0 ? name : ' '.repeat(name.length), note, { indent: 6, at: noteAt }),
  );
  const more = notes.length - shown.length;
  return more > 0 ? [...lines, `${' '.repeat(noteAt)}${text.more(count(more))}`] : lines;
}

function fileLines({ columns }: FileRecord, head: string, words: Words): readonly string[] {
  const text = words.deidentify;
  const turned = columns.filter((one) => !isSame(one) && !isLeftOut(one));
  const out = columns.filter(isLeftOut);
  const numbers = [columns.length - turned.length - out.length, turned.length, out.length].map((n) => count(n));
  const [same = '', changed = '', left = ''] = numbers;
  const became = ({ header, became: headers }: ColumnRecord): string =>
    text.became(header, headers.length === 0 ? text.merged : headers.join(', '));
  const because = ({ header, role }: ColumnRecord): string =>
    role.kind === 'left-out' ? text.because(header, text.leftOut[role.why]) : '';
  return [
    cut(head, screenWidth),
    `      ${text.fileColumns(same, changed, left)}`,
    ...noteLines(text.turned, turned.map(became), words),
    ...noteLines(text.out, out.map(because), words),
  ];
}

const sum = (files: readonly FileRecord[], of: (one: FileRecord) => number): number =>
  files.reduce((total, one) => total + of(one), 0);

/** What a reader of the copies should know. */
export function careNotes(record: RunRecord, words: Words): readonly string[] {
  const { notes } = words.deidentify;
  const { files } = record;
  const counted: readonly (readonly [n: number, note: (n: string) => string])[] = [
    [files.filter(({ renamed }) => renamed).length, notes.renamed],
    [cellsRemoved(files), (n) => notes.removed(n, removed)],
    [datesWithoutSurgery(files), notes.withoutSurgery],
    [sum(files, ({ nobody }) => nobody), notes.nobody],
    [sum(files, ({ ragged }) => ragged), notes.ragged],
    [sum(files, ({ unreadable }) => unreadable), notes.unreadable],
    [record.repeatedEyes, notes.repeated],
    [record.zeroDoubles, notes.zeros],
  ];
  const apart = files.length > 1 ? files.filter(({ isShared }) => !isShared) : [];
  return [
    ...counted.filter(([n]) => n > 0).map(([n, note]) => note(count(n))),
    ...apart.map(({ copy }) => notes.notShared(copy)),
    ...(record.namesAsNumbers ? [notes.names] : []),
    ...(record.operations === 0 ? [notes.noOperation] : []),
    ...(record.order && record.operations > 0 ? [notes.order] : []),
  ];
}

/** The screen of copies that were made. */
export function deidentifiedScreen(
  record: RunRecord,
  places: DeidentifiedPlaces,
  replaced: boolean,
  words: Words,
): string {
  const text = words.deidentify;
  const { files } = record;
  const heads = aligned(
    files.map(({ copy, rows }) => [copy, text.fileRows(count(rows))]),
    { right: [1] },
  );
  const notes = [...(replaced ? [text.replaced] : []), ...careNotes(record, words)];
  const codes = text.codesText(count(record.patients), count(record.newPatients), count(record.surgeons), places.book);
  return screen([
    wrapped(text.title(count(files.length), count(sum(files, ({ rows }) => rows)))),
    files.flatMap((one, at) => fileLines(one, heads[at] ?? '', words)),
    labelled(text.codes, codes, { at: noteAt }),
    notes.length === 0 ? [] : [`  ${text.care}`, ...notes.flatMap((note) => wrapped(note, screenWidth, 4))],
    labelled(words.screens.next, text.next(places.record, places.copies), { indent: 0, at: 7 }),
  ]);
}

/** The screen of a command that could not begin. */
export function notBegunScreen(title: string, mend: string, words: Words): string {
  return screen([
    wrapped(title),
    labelled(words.screens.notStarted.do, mend, { at: 7 }),
    labelled(words.screens.next, words.deidentify.nextStopped, { indent: 0, at: 7 }),
  ]);
}
