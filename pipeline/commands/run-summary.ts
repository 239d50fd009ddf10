import { countOfSeverity } from '../../src/findings/builder.js';
import { count, fixed } from '../../src/format/number.js';
import type { ResultRow } from '../../src/records/result.js';
import { resultKey } from '../../src/results/index.js';
import type { HeadlineLine, RunSummary } from '../../src/screens/run.js';
import { type Headline, headlineBasis, headlines } from '../../src/text/headline.js';
import { warnings } from '../../src/text/warnings.js';
import type { Words } from '../../src/words/index.js';
import type { AuditFile } from './audit-file.js';
import type { RunOutcome } from './outcome.js';
import { sinceFormer } from './since-former.js';

type Ended = Extract<RunOutcome, { kind: 'published' }>;

/** What the screen of a finished run tells, every number typeset. */
export function runSummary(ended: Ended, audit: AuditFile, seconds: number, words: Words): RunSummary {
  const { plan, all, published } = ended;
  const queries = countOfSeverity(all.findings, 'query') + countOfSeverity(all.findings, 'set aside');
  const inReport = (path: string): string => audit.shown(`${published.folder}/${path}`);
  return {
    title: plan.title,
    basis: headlineBasis(all.results, words),
    headlines: headlines(all.results, words).map(headlineLine),
    warnings: warnings(all.results, plan, words).map(({ text }) => text),
    former: published.former && sinceFormer(published.former, plan, all.results, words),
    made: {
      tables: count(all.typeset.length),
      figures: count(all.figures.length),
      review: count(published.review),
      queries: count(queries),
    },
    seconds: fixed(seconds, 1),
    publication: inReport('publication/index.html'),
    internal: inReport('internal/index.html'),
    queries: queries > 0 ? inReport('internal/queries.csv') : undefined,
  };
}

function headlineLine({ label, fraction, value, interval, part }: Headline): HeadlineLine {
  return { label, fraction, value, interval: interval === '' ? '' : `(${interval})`, part };
}

/** The same for programs: numbers at full precision. */
export function runData(
  { all, published }: Ended,
  summary: RunSummary,
  words: Words,
): Readonly<Record<string, unknown>> {
  const rowOf = (key: string | undefined): ResultRow | undefined =>
    all.results.rows.find((row) => resultKey(row) === key);
  const numbers = headlines(all.results, words).map(({ id, from }) => {
    const row = rowOf(from[0]);
    return { id, key: from[0], value: row?.value, ci_low: row?.ci_low, ci_high: row?.ci_high, n: row?.n };
  });
  return {
    outcome: 'published',
    title: summary.title,
    headlines: numbers,
    warnings: summary.warnings,
    publication: summary.publication,
    internal: summary.internal,
    queries: summary.queries ?? null,
    tables: all.typeset.length,
    figures: all.figures.length,
    review: published.review,
  };
}
