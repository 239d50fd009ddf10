import type { Words } from '../words/index.js';
import { aligned, apart, cut, labelled, screen, screenWidth, wrapped } from './layout.js';

/** All findings of one rule: what the rule says, how many, and where the first ones stand. */
export interface RuleCount {
  sentence: string;
  count: string;
  /** Where the first ones stand, one entry a file, each from the fullest wording to the shortest. */
  places: readonly (readonly string[])[];
}

/** One file, and how it was read. */
export interface FileLine {
  file: string;
  rows: string;
  /** 'semicolons, decimal commas, day first, utf-8'. */
  how: string;
}

/** What the screen of a check tells; numbers are typeset. */
export interface CheckSummary {
  title: string;
  /** audit.yaml, as the reader typed it. */
  audit: string;
  read: readonly FileLine[];
  rows: { files: string; rows: string; used: string; setAside: string };
  columns: { placed: string; all: string };
  eyes: { eyes: string; patients: string; both: string };
  visit: { known: string; due: string; notYetDue: string };
  values: { setAside: string; queries: string; notes: string };
  setAside: readonly RuleCount[];
  queries: readonly RuleCount[];
  /** The query list. */
  list: string;
}

/** Kinds of findings that a screen lists before it says how many more there are. */
const mostKinds = 8;

/** The screen of a check that found nothing to stop for. */
export function checkScreen(summary: CheckSummary, words: Words['screens']): string {
  const text = words.check;
  const { rows, columns, eyes, visit, values } = summary;
  return screen([
    apart(summary.title, text.nothingPublished(summary.audit)),
    aligned(
      summary.read.map(({ file, rows: count, how }) => [file, count, how]),
      { right: [1] },
    ).map((line) => cut(line, screenWidth)),
    [
      ...labelled(text.files, text.filesRead(rows.files, rows.rows, rows.used, rows.setAside), { at: 13 }),
      ...labelled(text.columns, text.columnsPlaced(columns.placed, columns.all), { at: 13 }),
      ...labelled(text.eyes, text.eyesOperated(eyes.eyes, eyes.patients, eyes.both), { at: 13 }),
      ...labelled(text.visit, text.visits(visit.known, visit.due, visit.notYetDue), { at: 13 }),
      ...labelled(text.values, text.valuesJudged(values.setAside, values.queries, values.notes), { at: 13 }),
    ],
    ruleLines(summary, text),
    [`  ${text.clear}`, ...wrapped(text.all(summary.list), undefined, 2)],
    labelled(words.next, words.toRun(summary.audit), { indent: 0, at: 7 }),
  ]);
}

/** Widths of a rule's sentence and of its place: with margins and a count they fill a line. */
const sentenceWidth = 38;
const placeWidth = 27;

/** The fullest wording that fits. */
function fitting(places: readonly string[]): string {
  return places.find((place) => place.length <= placeWidth) ?? cut(places.at(-1) ?? '', placeWidth);
}

function ruleLines(summary: CheckSummary, text: Words['screens']['check']): readonly string[] {
  const groups = [
    { heading: text.setAside, rules: summary.setAside },
    { heading: text.query, rules: summary.queries },
  ].filter(({ rules }) => rules.length > 0);
  if (groups.length === 0) return [];
  const header = ['', text.count, text.firstPlaces];
  const rows = groups.flatMap(({ heading, rules }, at) => [
    at === 0 ? [heading, ...header.slice(1)] : [heading, '', ''],
    ...rules.slice(0, mostKinds).flatMap(ruleRows),
    ...(rules.length > mostKinds ? [moreRow(rules.slice(mostKinds), text)] : []),
  ]);
  return aligned(rows, { right: [1] });
}

/** A rule with its first file; further files stand below it. */
function ruleRows({ sentence, count, places }: RuleCount): readonly (readonly string[])[] {
  const [first = [], ...more] = places;
  return [
    [`  ${cut(sentence, sentenceWidth)}`, count, fitting(first)],
    ...more.map((place) => ['', '', fitting(place)]),
  ];
}

function moreRow(rules: readonly RuleCount[], text: Words['screens']['check']): readonly string[] {
  return [`  ${text.more(String(rules.length))}`, '', ''];
}
