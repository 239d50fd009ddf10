import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, shareCell, valueCell, vectorCell } from './cells.js';
import type { CohortPair } from './cohort-pairs.js';
import { type ComparedOutcome, estimateOf } from './compared-outcomes.js';
import { noteCodes } from './marks.js';
import { shareOf } from './outcome-words.js';
import type { Asked, Setting, ShownCell } from './shapes.js';
import { valueText } from './value-text.js';

/** Where a comparison's cells take their rows from. */
export interface Compares extends Pick<Setting, 'results' | 'plan' | 'words'> {
  pair: CohortPair;
  /** Note of the design of all eligible eyes. */
  design: string;
}

export const blank: ShownCell = { text: '', rows: [] };

/** Rows of a comparison without the design that all of them have: a footnote tells it once. */
export function withoutDesign(row: ResultRow, design: string): ResultRow {
  const codes = noteCodes(row).filter((code) => code !== design);
  return { ...row, note: codes.join(';') };
}

const named = ({ row }: ComparedOutcome): string => row.measure;

/**
 * What one cohort has by itself; nothing for a relative effect, which no cohort has alone, nor for a ratio of shares that
 * stands below their difference.
 */
export function cohortCell({ results, words }: Compares, group: string, outcome: ComparedOutcome): ShownCell {
  const get: Asked = (statistic) => results.get(named(outcome), group, statistic);
  const { one } = outcome;
  if (one.by === 'effect' || (one.by === 'risk-ratio' && !outcome.isPrimary)) return blank;
  if (one.by === 'centroid') return vectorCell(get, words);
  if (one.by !== 'risk' && one.by !== 'risk-ratio') return estimateCell(get(one.of), words);
  const share = shareOf(one);
  return shareCell(get(share), get(share.replace(/^share/, 'count')), words);
}

/** Eyes of a cohort with the outcome's measure, and without. */
export function cohortEyes({ results, words }: Compares, group: string, outcome: ComparedOutcome): ShownCell {
  return eyesCell((statistic) => results.get(named(outcome), group, statistic), words);
}

/** The difference or ratio with its interval; of a vector as a vector, with its region. */
export function differenceCell(compares: Compares, outcome: ComparedOutcome): ShownCell {
  const { design, words } = compares;
  if (outcome.one.by === 'centroid') return vectorDifference(compares, outcome);
  return estimateCell(withoutDesign(outcome.row, design), words);
}

function vectorDifference({ results, pair, design, words }: Compares, outcome: ComparedOutcome): ShownCell {
  const parts = ['magnitude', 'axis', 'ellipse_major', 'ellipse_minor'] as const;
  const rows = parts.map((part) =>
    withoutDesign(results.get(named(outcome), pair.group, `difference_${part}`), design),
  );
  const [magnitude, axis, major, minor] = rows as [ResultRow, ResultRow, ResultRow, ResultRow];
  if (magnitude.value === undefined) return valueCell(magnitude, words);
  const vector = `${valueText(magnitude, words)}${axis.value === undefined ? '' : ` @ ${valueText(axis, words)}`}`;
  if (major.value === undefined) return { text: vector, rows: [magnitude, axis, major] };
  const region = `${valueText(major, words)} × ${valueText(minor, words)}`;
  return { text: words.tables.comparison.table.region(vector, region), rows };
}

/** Test with its degrees of freedom, and p, of a statistic by name; blank where there is none. */
export function testCells(
  { results, pair, words }: Pick<Compares, 'results' | 'words'> & { pair: Pick<CohortPair, 'group'> },
  measure: string,
  statistic: string,
): readonly [test: ShownCell, p: ShownCell] {
  const p = results.find(measure, pair.group, `p:${statistic}`);
  if (!p) return [blank, blank];
  const df = results.find(measure, pair.group, `df:${statistic}`);
  return [{ text: testText(p, df, words), rows: df ? [p, df] : [p] }, valueCell(p, words)];
}

function testText({ method }: ResultRow, df: ResultRow | undefined, words: Words): string {
  const { f, t, tests } = words.tables.comparison.table;
  if (df) return (method === 'centroid-difference' ? f : t)(valueText(df, words));
  const names: Readonly<Record<string, string>> = tests;
  const name = names[method];
  if (name === undefined) throw new RangeError(`testText: test "${method}" has no words in src/words/en/comparison.ts`);
  return name;
}

/** The test of an outcome's own estimate. */
export function outcomeTest(compares: Compares, { row, one }: ComparedOutcome) {
  return testCells(compares, row.measure, one.by === 'centroid' ? one.statistic : estimateOf(one));
}
