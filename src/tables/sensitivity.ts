import { withPair } from '../comparison/group.js';
import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, shareCell, valueCell } from './cells.js';
import { type CohortPair, cohortPairs, designOf } from './cohort-pairs.js';
import { cohortColumns } from './cohorts.js';
import { type ComparedOutcome, comparedAs, comparedOutcomes } from './compared-outcomes.js';
import { blank, differenceCell } from './comparison-cells.js';
import { comparisonLevels, primaryLevel } from './comparison-notes.js';
import { finish } from './finish.js';
import { outcomeVisit } from './follow-up.js';
import { levelText } from './level.js';
import { noteCodes } from './marks.js';
import { outcomeText } from './outcome-words.js';
import { block } from './rows.js';
import type { Column, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

type Told = Pick<Setting, 'results' | 'plan' | 'words'>;

const waysPrefix = 'sensitivity=';
const pairOf = (way: string): string => `${waysPrefix}${way}`;

/** Other ways to look at the same numbers, as groups name them, in the order of the results. */
function waysOf({ rows }: Results): readonly string[] {
  const found = rows.flatMap(({ group }) => (group.startsWith(waysPrefix) ? [group.slice(waysPrefix.length)] : []));
  return [...new Set(found)].filter((way) => !way.includes(';'));
}

/**
 * The headline numbers, and the primary differences, beside the same with one eye a patient, without eyes that are
 * asked about, and by the policies that were not chosen: do they hang on a choice that was made?
 */
export function sensitivity(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words };
  const [numbers, ways] = [headlineNumbers(results), waysOf(results)];
  if (numbers.length === 0) return undefined;
  const { withInterval, comparison, titles, statistic } = words.tables;
  const text = comparison.sensitivity;
  const pairs = cohortPairs(results, words);
  const [all, ...cohorts] = [...cohortColumns(results, plan, words)].reverse();
  const groups = [all as Column, ...cohorts.reverse()];
  return finish(
    {
      id: 'sensitivity',
      title: titles.sensitivity(outcomeVisit(plan, words)),
      head: [withInterval(statistic, levelText(plan)), text.main, ...ways.map((way) => text.ways[way] ?? way)].map(
        (head) => ({ text: head }),
      ),
      rows: [
        ...groups.flatMap((group) => groupRows(setting, numbers, group)),
        ...pairs.flatMap((pair) => primaryRows(setting, pair)),
      ],
      ...(pairs.length > 0 ? { level: comparisonLevels(results, plan, words) } : {}),
      footnotes: [
        text.oneEye,
        text.queries,
        ...ways.flatMap((way) => text.policies[way] ?? []),
        ...(numbers.some(({ measure }) => measure.endsWith('dva')) ? [text.lowVision] : []),
      ],
    },
    { ...setting, columns: [] },
  );
}

/** Headline numbers that any eye has: those that are there with one eye a patient. */
function headlineNumbers({ rows, find }: Results): readonly ResultRow[] {
  return rows.filter(
    ({ group, measure, method, n }) =>
      group === pairOf('one-eye') && method !== 'count' && n > 0 && find(measure, 'all', 'n')?.value,
  );
}

function groupRows(
  { results, words }: Told,
  numbers: readonly ResultRow[],
  { group, label }: Column,
): readonly DraftRow[] {
  const rows = numbers.map(({ measure, statistic, unit }): DraftRow => {
    const what = comparedAs(results, measure, statistic);
    // A policy moves the errors alone: the other numbers have no row in its way.
    const cellOf = (of: string): ShownCell => {
      const row = results.find(measure, of, statistic);
      if (row?.unit !== 'share') return row ? meanCell(row, words) : blank;
      return shareCell(row, results.get(measure, of, statistic.replace('share', 'count')), words);
    };
    const shown = [group, ...waysOf(results).map((way) => withPair(group, pairOf(way)))].map(cellOf);
    const name = what ? outcomeText(what, words) : measure;
    const label = unit === 'share' ? words.tables.comparison.sensitivity.share(name) : name;
    return { label, indent: 1, cells: shown };
  });
  return [block(label), ...rows];
}

/** A mean with its eyes. */
function meanCell(row: ResultRow, words: Words): ShownCell {
  if (row.value === undefined) return valueCell(row, words);
  const text = words.tables.comparison.sensitivity.mean(estimateCell(row, words).text, count(row.n));
  return { text, rows: [row] };
}

/** The primary differences of one comparison; those with fewer eyes bear no verdict. */
function primaryRows({ results, plan, words }: Told, pair: CohortPair): readonly DraftRow[] {
  const { table, sensitivity: text } = words.tables.comparison;
  const primaries = comparedOutcomes(results, plan, pair.group).filter(({ isPrimary }) => isPrimary);
  if (primaries.length === 0) return [];
  const cellOf = (outcome: ComparedOutcome, group: string): ShownCell => {
    const row = results.find(outcome.row.measure, group, outcome.row.statistic);
    if (!row) return blank;
    // One eye a patient is another design than both: it is told once, below the table.
    const design = noteCodes(row).find((code) => code.startsWith('design:')) ?? designOf(results, pair);
    const cell = differenceCell({ results, plan, words, design, pair: { ...pair, group } }, { ...outcome, row });
    return row.value === undefined ? cell : { ...cell, text: text.mean(cell.text, count(row.n)) };
  };
  const rows = primaries.map((outcome): DraftRow => {
    const groups = [pair.group, ...waysOf(results).map((way) => withPair(pair.group, pairOf(way)))];
    return { label: outcomeText(outcome, words), indent: 1, cells: groups.map((group) => cellOf(outcome, group)) };
  });
  const head = table.differenceOf(pair.compared.label, pair.reference.label);
  return [block(words.tables.withInterval(head, primaryLevel(results))), ...rows];
}
