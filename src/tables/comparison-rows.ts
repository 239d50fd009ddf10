import { count } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import { estimateCell, valueCell } from './cells.js';
import { type ComparedOutcome, isOpen } from './compared-outcomes.js';
import {
  blank,
  type Compares,
  cohortCell,
  cohortEyes,
  differenceCell,
  outcomeTest,
  testCells,
  withoutDesign,
} from './comparison-cells.js';
import { declaredText, outcomeLabel, outcomeWords, statisticLabel } from './outcome-words.js';
import { block } from './rows.js';
import type { DraftRow, ShownCell } from './shapes.js';

/** A primary outcome with all that belongs to it: eyes, adjusted p, verdict, adjusted difference, what it could show. */
export function primaryRows(compares: Compares, outcome: ComparedOutcome): readonly DraftRow[] {
  return [
    estimateRow(compares, outcome, outcomeLabel(outcome, compares.words), 0),
    eyesRow(compares, outcome),
    ...holmRow(compares, outcome),
    ...verdictRow(compares, outcome),
    ...adjustedRows(compares, outcome),
    ...powerRows(compares, outcome),
  ];
}

/** The exploratory statistics of one measure. */
export function exploratoryRows(compares: Compares, outcomes: readonly ComparedOutcome[]): readonly DraftRow[] {
  const { words } = compares;
  return outcomes.flatMap((outcome, index) => [
    ...(index === 0 ? [block(outcomeWords(outcome.measure, words).block), eyesRow(compares, outcome)] : []),
    estimateRow(compares, outcome, statisticLabel(outcome, words), 1),
    ...adjustedRows(compares, outcome),
    ...neededRows(compares, outcome),
  ]);
}

function estimateRow(compares: Compares, outcome: ComparedOutcome, label: string, indent: 0 | 1): DraftRow {
  const { reference, compared } = compares.pair;
  const cohorts = [reference, compared].map(({ group }) => cohortCell(compares, group, outcome));
  return { label, indent, cells: [...cohorts, differenceCell(compares, outcome), ...outcomeTest(compares, outcome)] };
}

/** Eyes of each cohort with the value; in the difference also their patients. */
function eyesRow(compares: Compares, outcome: ComparedOutcome): DraftRow {
  const { pair, words } = compares;
  const { eyes, eyesAndPatients } = words.tables.comparison.table;
  const { row } = outcome;
  const cohorts = [pair.reference, pair.compared].map(({ group }) => cohortEyes(compares, group, outcome));
  const both = { text: eyesAndPatients(count(row.n), count(row.patients)), rows: [bare(row)] };
  return { label: eyes, indent: 1, cells: [...cohorts, both, blank, blank] };
}

/** A row of which only its eyes and patients are shown: neither its interval nor its notes belong to the cell. */
function bare(row: ResultRow): ResultRow {
  return { ...row, ci_low: undefined, ci_high: undefined, method: '', note: '' };
}

/** One cell in the column of differences. */
function below(label: string, cell: ShownCell): DraftRow {
  return { label, indent: 1, cells: [blank, blank, cell, blank, blank] };
}

/** With one primary outcome the adjusted p is p. */
function holmRow({ results, pair, words }: Compares, { row, one }: ComparedOutcome): readonly DraftRow[] {
  const adjusted = results.find(row.measure, pair.group, `p_adjusted:${one.statistic}`);
  if (!adjusted || results.get('primaries', 'all', 'count').value === 1) return [];
  const cells = [blank, blank, blank, blank, valueCell(bare(adjusted), words)];
  return [{ label: words.tables.comparison.table.pAdjusted, indent: 1, cells }];
}

function verdictRow({ pair, words }: Compares, outcome: ComparedOutcome): readonly DraftRow[] {
  const { verdict, margin, row } = outcome;
  if (verdict === undefined) return [];
  const { table, verdicts } = words.tables.comparison;
  const { label } = pair.compared;
  const about =
    margin === undefined ? table.verdict(label) : table.verdictMargin(label, declaredText(outcome, margin, words));
  return [below(about, { text: verdicts[verdict], rows: [bare(row)] })];
}

/** The difference at equal covariates, and where these leave eyes out, the unadjusted one of the eyes that are left. */
function adjustedRows(compares: Compares, outcome: ComparedOutcome): readonly DraftRow[] {
  const { results, pair, design, words } = compares;
  const { adjusted, sameEyes } = words.tables.comparison.statistics;
  const rowOf = (name: string, labelOf: (row: ResultRow) => string): readonly DraftRow[] => {
    const statistic = `${name}_${outcome.one.statistic}`;
    const row = results.find(outcome.row.measure, pair.group, statistic);
    if (!row) return [];
    const difference = estimateCell(withoutDesign(row, design), words);
    const cells = [blank, blank, difference, ...testCells(compares, row.measure, statistic)];
    return [{ label: labelOf(row), indent: 1, cells }];
  };
  return [...rowOf('same_eyes', ({ n }) => sameEyes(count(n))), ...rowOf('adjusted', () => adjusted)];
}

/** What an open comparison was able to show. */
function powerRows(compares: Compares, outcome: ComparedOutcome): readonly DraftRow[] {
  const { results, pair, words } = compares;
  const { detectable, halfWidth } = words.tables.comparison.table;
  if (!isOpen(outcome)) return [];
  const rowOf = (name: string, label: string): readonly DraftRow[] => {
    const row = results.find(outcome.row.measure, pair.group, `${name}:${outcome.one.statistic}`);
    return row ? [below(label, valueCell(bare(row), words))] : [];
  };
  return [...rowOf('half_width', halfWidth), ...rowOf('detectable', detectable), ...neededRows(compares, outcome)];
}

/** Eyes that a declared difference, or the margin, would need. */
function neededRows(compares: Compares, outcome: ComparedOutcome): readonly DraftRow[] {
  const { results, pair, words } = compares;
  const { needed, neededMargin } = words.tables.comparison.table;
  const rowOf = (name: string, declared: number | undefined, label: (text: string) => string): readonly DraftRow[] => {
    const row = results.find(outcome.row.measure, pair.group, `${name}:${outcome.one.statistic}`);
    if (!row || declared === undefined) return [];
    return [below(label(declaredText(outcome, declared, words)), valueCell(bare(row), words))];
  };
  return [
    ...rowOf('eyes_needed', outcome.difference, needed),
    ...rowOf('eyes_needed_margin', outcome.margin, neededMargin),
  ];
}
