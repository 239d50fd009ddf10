import type { Words } from '../words/index.js';
import { aligned, apart, labelled, screen, screenWidth, wrapped } from './layout.js';

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
      ...pathLines([
        [summary.publication, text.publication],
        [summary.internal, text.internal],
      ]),
    ],
    labelled(words.next, next, { indent: 0, at: 7 }),
  ]);
}

/** A headline that is neither share nor estimate (eyes and patients) runs across the columns of the others. */
function headlineLines(headlines: readonly HeadlineLine[]): readonly string[] {
  const name = ({ label, part }: HeadlineLine): string => (part ? `  ${label}` : label);
  const across = ({ fraction, interval }: HeadlineLine): boolean => fraction === '' && interval === '';
  const width = Math.max(0, ...headlines.map((each) => name(each).length));
  const columns = aligned(
    headlines.map((each) => (across(each) ? ['', '', ''] : [each.fraction, each.value, each.interval])),
  );
  return headlines.map((each, at) => {
    const rest = across(each) ? `  ${each.value}` : (columns[at] ?? '');
    return `  ${name(each).padEnd(width)}${rest}`.trimEnd();
  });
}

/** A path and what it is for: side by side, or one below the other where the path is long. */
function pathLines(rows: readonly (readonly [path: string, note: string])[]): readonly string[] {
  const lines = aligned(rows);
  if (lines.every((line) => line.length <= screenWidth)) return lines;
  return rows.flatMap(([path, note]) => [`  ${path}`, `    ${note}`]);
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
