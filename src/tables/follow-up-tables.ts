import { comparisonGroup, withPair } from '../comparison/group.js';
import type { Plan } from '../records/plan.js';
import { groupPair, type Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { characteristicCells, shownCharacteristics } from './baseline.js';
import { describedShareCell, patientsCell, shareCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { comparedAs } from './compared-outcomes.js';
import { blank } from './comparison-cells.js';
import { finish } from './finish.js';
import { outcomeVisit } from './follow-up.js';
import { headlineError } from './headline-error.js';
import { levelText } from './level.js';
import { outcomeText } from './outcome-words.js';
import { across, block, cohortHead } from './rows.js';
import type { DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

/**
 * Of the eyes that were due, how many were seen, by visit and cohort; and what the headline shares would be, had every
 * missing eye failed, or succeeded.
 */
export function followUp(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const visits = plan.follow_up.visits.map(({ name }) => name);
  const isMade = visits.every((visit) => results.find('completeness', groupPair('visit', visit), 'due'));
  if (!isMade || !results.find('completeness', 'all', 'due')?.value) return undefined;
  const { followUp: text, titles, stage } = words.tables;
  return finish(
    {
      id: 'follow-up',
      title: titles['follow-up'](),
      head: cohortHead(setting, stage, 'completeness', 'due'),
      rows: [
        ...visits.map((visit) => visitRow(setting, visit)),
        across(
          setting,
          'completeness',
          withLevel(text.known, setting),
          (get) => shareCell(get('share'), get('count'), words),
          0,
        ),
        across(setting, 'completeness', text.notYetDue, (get) => valueCell(get('not_yet_due'), words), 0),
        ...boundedShares(results).flatMap(([measure, statistic]) => boundRows(setting, measure, statistic)),
      ],
      footnotes: [text.due, text.boundsNote],
    },
    setting,
  );
}

const withLevel = (label: string, { plan, words }: Setting): string =>
  words.tables.withInterval(label, levelText(plan));

function visitRow(setting: Setting, visit: string): DraftRow {
  const { results, columns, words } = setting;
  const cellOf = (group: string): ShownCell => {
    const of = withPair(group, groupPair('visit', visit));
    return shareCell(results.get('completeness', of, 'share'), results.get('completeness', of, 'count'), words);
  };
  const label = withLevel(words.tables.followUp.visit(visit), setting);
  return { label, indent: 0, cells: columns.map(({ group }) => cellOf(group)) };
}

/** The headline shares of outcomes that wait for a visit, where any eye has them. */
function boundedShares(results: Results): readonly (readonly [measure: string, statistic: string])[] {
  const error = headlineError(results);
  const wanted = [
    ...(error === undefined ? [] : [[error, 'share_within_0.50'] as const]),
    ['refractive_cylinder_after_recorded', 'share_within_0.50'] as const,
    ['cdva', 'share_at_or_better_20/40'] as const,
    ['udva', 'share_at_or_better_20/40'] as const,
  ];
  return wanted.filter(([measure]) => results.find(measure, 'all', 'n')?.value);
}

function boundRows(setting: Setting, measure: string, statistic: string): readonly DraftRow[] {
  const { results, words } = setting;
  const { followUp: text } = words.tables;
  const what = comparedAs(results, measure, statistic);
  if (!what) throw new RangeError(`boundRows: no share "${measure}/${statistic}" in the registry`);
  const numerator = statistic.replace('share', 'count');
  const bound = (label: string, name: string): DraftRow =>
    across(setting, measure, label, (get) =>
      describedShareCell(get(`${name}:${statistic}`), get(`count_${name}:${statistic}`), words),
    );
  return [
    block(text.bounds(outcomeText(what, words))),
    across(setting, measure, withLevel(text.observed, setting), (get) =>
      shareCell(get(statistic), get(numerator), words),
    ),
    bound(text.failed, 'if_missing_failed'),
    bound(text.succeeded, 'if_missing_succeeded'),
  ];
}

/** What due eyes without an outcome were before surgery, beside those with one; nothing where none is missing. */
export function missingOutcomes(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const { baseline, characteristic, followUp: text, notes, standardised, titles } = words.tables;
  const columns = [
    { group: groupPair('follow_up', 'known'), label: text.withOutcome },
    { group: groupPair('follow_up', 'missing'), label: text.withoutOutcome },
  ];
  const setting = { results, plan, words, columns };
  if (columns.some(({ group }) => !results.find('completeness', group, 'count')?.value)) return undefined;
  const group = comparisonGroup('follow_up', 'missing', 'known');
  const head = cohortHead(setting, characteristic, 'completeness', 'count');
  const patients = across(setting, 'completeness', baseline.patients, (get) => patientsCell(get('count')), 0);
  return finish(
    {
      id: 'missing-outcomes',
      title: titles['missing-outcomes'](outcomeVisit(plan, words)),
      head: [...head, { text: standardised }],
      rows: [
        { ...patients, cells: [...patients.cells, blank] },
        ...shownCharacteristics(results).flatMap((name) => characteristicCells(setting, [{ group }], name)),
      ],
      footnotes: [notes.perEye, text.compared],
    },
    { ...setting, columns: [] },
  );
}
