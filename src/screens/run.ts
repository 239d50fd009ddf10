import type { Words } from '../words/index.js';
import { aligned, apart, labelled, screen, wrapped } from './layout.js';

/** One of the numbers that a run is judged by, typeset. */
export interface HeadlineLine {
  label: string;
  /** '287 of 371'; '' where the number is no share. */
  fraction: string;
  value: string;
  /** '(72.3 to 81.7)'; '' where there is none. */
  interval: string;
  /** Stands below the line before it, as a part of it. */
  part: boolean;
}

/** What changed against the report that this run replaced. */
export interface SinceFormer {
  /** Keys of audit.yaml whose value changed. */
  settings: readonly string[];
  moved: readonly { label: string; from: string; to: string }[];
}

/** What the screen of a finished run tells. Numbers are typeset; paths are as the reader may type them. */
export interface RunSummary {
  title: string;
  /** Which error the headlines count: 'by predicted refraction'. */
  basis: string;
  headlines: readonly HeadlineLine[];
  warnings: readonly string[];
  former: SinceFormer | undefined;
  made: { tables: string; figures: string; review: string; queries: string };
  /** '3.1'; undefined where the time was not taken. */
  seconds: string | undefined;
  publication: string;
  internal: string;
  /** The query list, where it holds a query. */
  queries: string | undefined;
}

/** The screen of a run that ended well. */
export function runScreen(summary: RunSummary, words: Words['screens']): string {
  const text = words.run;
  const { tables, figures, review, queries } = summary.made;
  const time = summary.seconds === undefined ? '' : text.seconds(summary.seconds);
  const next = summary.queries
    ? text.nextQueries(summary.publication, summary.queries)
    : text.next(summary.publication);
  return screen([
    apart(summary.title, summary.basis),
    headlineLines(summary.headlines),
    warningLines(summary.warnings, text.warnings),
    formerLines(summary.former, words),
    [
      ...apart(`  ${text.made(tables, figures, review, queries)}`, time),
      ...aligned([
        [summary.publication, text.publication],
        [summary.internal, text.internal],
      ]),
    ],
    labelled(words.next, next, { indent: 0, at: 7 }),
  ]);
}

function headlineLines(headlines: readonly HeadlineLine[]): readonly string[] {
  const rows = headlines.map(({ label, fraction, value, interval, part }) => [
    part ? `  ${label}` : label,
    fraction,
    value,
    interval,
  ]);
  return aligned(rows);
}

function warningLines(warnings: readonly string[], heading: string): readonly string[] {
  if (warnings.length === 0) return [];
  return [`  ${heading}`, ...warnings.flatMap((warning) => wrapped(warning, undefined, 4))];
}

function formerLines(former: SinceFormer | undefined, { run }: Words['screens']): readonly string[] {
  if (!former) return [];
  const moved = former.moved.map(({ label, from, to }) => `    ${run.moved(label, from, to)}`);
  const settings = former.settings.length > 0 ? wrapped(run.settings(former.settings.join(', ')), undefined, 4) : [];
  return [`  ${run.former}`, ...settings, ...(moved.length > 0 ? moved : [`    ${run.sameResults}`])];
}
