import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { type CohortPair, cohortPairs, designOf, referenceOf } from './cohort-pairs.js';
import { type ComparedOutcome, comparedOutcomes, isTold } from './compared-outcomes.js';
import type { Compares } from './comparison-cells.js';
import { comparisonLevels, comparisonNotes, primaryLevel } from './comparison-notes.js';
import { exploratoryRows, primaryRows } from './comparison-rows.js';
import { concernsOf } from './concerns.js';
import { finish } from './finish.js';
import { outcomeVisit } from './follow-up.js';
import { levelText } from './level.js';
import { block } from './rows.js';
import type { Draft, DraftRow, UnnumberedTable } from './shapes.js';

/**
 * Each cohort against the reference: the primary outcomes with their verdicts first, then every other outcome with its
 * interval and no verdict. What goes together with the cohorts stands in title and first footnotes.
 */
export function comparison(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const pairs = cohortPairs(results, words);
  const blocks = pairs.map((pair) => comparedIn({ results, plan, words, pair, design: designOf(results, pair) }));
  if (blocks.every(({ outcomes }) => outcomes.length === 0)) return undefined;
  const several = pairs.length > 1;
  const told = blocks.flatMap(({ outcomes }) => outcomes);
  return finish(
    {
      id: 'comparison',
      title: titleOf(pairs, results, plan, words),
      head: heads(pairs, results, words),
      rows: blocks.flatMap((one) => [...(several ? [pairHead(one.compares)] : []), ...blockRows(one)]),
      level: comparisonLevels(results, plan, words),
      footnotes: comparisonNotes({ results, plan, words }, pairs, told),
    },
    { results, plan, words, columns: [] },
  );
}

interface Block {
  compares: Compares;
  outcomes: readonly ComparedOutcome[];
}

function comparedIn(compares: Compares): Block {
  const all = comparedOutcomes(compares.results, compares.plan, compares.pair.group);
  return { compares, outcomes: all.filter((outcome) => isTold(outcome, all)) };
}

function titleOf(pairs: readonly CohortPair[], results: Results, plan: Plan, words: Words): string {
  const { comparison: text, titles } = words.tables;
  const labels = pairs.map(({ compared }) => compared.label).join(', ');
  const unlike = [...new Set(pairs.flatMap((pair) => concernsOf(results, pair, words).map(({ subject }) => subject)))];
  const cohorts = text.table.against(labels, referenceOf(pairs).label);
  return titles.comparison(outcomeVisit(plan, words), pairs[0]?.field ?? '', cohorts, unlike.join(', '));
}

function heads(pairs: readonly CohortPair[], results: Results, words: Words): Draft['head'] {
  const { table } = words.tables.comparison;
  const [only, ...others] = pairs;
  const cohort = ({ group, label }: CohortPair['compared']) => {
    return { text: label, n: results.get('flow:eligible', group, 'analysed').n };
  };
  const isOne = only !== undefined && others.length === 0;
  return [
    { text: table.outcome },
    cohort(referenceOf(pairs)),
    isOne ? cohort(only.compared) : { text: table.compared },
    { text: isOne ? table.differenceOf(only.compared.label, only.reference.label) : table.difference },
    { text: table.test },
    { text: table.p },
  ];
}

/** The compared cohort with its eyes, where it has no column of its own. */
function pairHead({ results, pair, words }: Compares): DraftRow {
  const { headCount, comparison: text } = words.tables;
  const { compared, reference } = pair;
  const { n } = results.get('flow:eligible', compared.group, 'analysed');
  return block(text.table.against(headCount(compared.label, count(n)), reference.label));
}

function blockRows({ compares, outcomes }: Block): readonly DraftRow[] {
  const { results, plan, words } = compares;
  const { table } = words.tables.comparison;
  const primaries = outcomes.filter(({ isPrimary }) => isPrimary);
  const others = outcomes.filter(({ isPrimary }) => !isPrimary);
  const measures = [...new Set(others.map(({ measure }) => measure))];
  return [
    ...(primaries.length > 0 ? [block(table.primary(primaryLevel(results), primaries.length > 1))] : []),
    ...primaries.flatMap((outcome) => primaryRows(compares, outcome)),
    ...(others.length > 0 ? [block(table.exploratory(levelText(plan)))] : []),
    ...measures.flatMap((measure) =>
      exploratoryRows(
        compares,
        others.filter((outcome) => outcome.measure === measure),
      ),
    ),
  ];
}
