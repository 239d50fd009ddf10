import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { meanSdCell, medianRangeCell, patientsCell, shareCell, valueCell } from './cells.js';
import { type CohortPair, cohortPairs } from './cohort-pairs.js';
import { cohortColumns } from './cohorts.js';
import { blank } from './comparison-cells.js';
import { finish } from './finish.js';
import { levelText } from './level.js';
import { across, block, cohortHead } from './rows.js';
import type { DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';
import { valueText } from './value-text.js';

const characteristics = [
  'age',
  'female',
  'right_eye',
  'axial_length',
  'k_mean_before',
  'corneal_cylinder_magnitude_before',
  'lens_power',
  'toric',
  'cdva_before',
  'udva_before',
] as const;
type Characteristic = (typeof characteristics)[number];

/** Characteristics that any eye has, in the order of the report. */
export function shownCharacteristics(results: Results): readonly Characteristic[] {
  return characteristics.filter((name) => results.find(name, 'all', 'n')?.value);
}

/**
 * What the eligible eyes were before surgery, by cohort, with standardised differences. A characteristic that no eye
 * has is left out. No p values: cohorts are described here, not tested.
 */
export function baseline(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const eligible = 'flow:eligible';
  if (results.get(eligible, 'all', 'analysed').value === 0) return undefined;
  const shown = shownCharacteristics(results);
  const pairs = cohortPairs(results, words);
  const { baseline: labels, characteristic, notes, titles } = words.tables;
  return finish(
    {
      id: 'baseline',
      title: titles.baseline(),
      head: [...cohortHead(setting, characteristic, eligible, 'analysed'), ...differenceHeads(pairs, words)],
      rows: [
        withDifferences(
          across(setting, eligible, labels.patients, (get) => patientsCell(get('analysed')), 0),
          pairs,
        ),
        ...shown.flatMap((name) => characteristicCells(setting, pairs, name)),
      ],
      footnotes: [
        notes.perEye,
        ...(pairs.length > 0 ? [notes.imbalance] : []),
        ...agesNote(setting),
        ...missingNote(setting, shown),
      ],
    },
    setting,
  );
}

/** One column a comparison, behind those of the groups. */
function differenceHeads(pairs: readonly CohortPair[], { tables }: Words): readonly { text: string }[] {
  const { standardised, standardisedOf } = tables;
  const isOne = pairs.length === 1;
  return pairs.map(({ compared, reference }) => {
    return { text: isOne ? standardised : standardisedOf(compared.label, reference.label) };
  });
}

/** A row of the groups with its standardised differences behind it; blank where the row is not what differs. */
function withDifferences(
  row: DraftRow,
  pairs: readonly Pick<CohortPair, 'group'>[],
  cell: (pair: Pick<CohortPair, 'group'>) => ShownCell = () => blank,
): DraftRow {
  return { ...row, cells: [...row.cells, ...pairs.map(cell)] };
}

/** One characteristic in every column, with its standardised difference in every pair of groups. */
export function characteristicCells(
  setting: Setting,
  pairs: readonly Pick<CohortPair, 'group'>[],
  name: Characteristic,
): readonly DraftRow[] {
  const { results, plan, words } = setting;
  const { baseline: labels, rows } = words.tables;
  const standardised = ({ group }: Pick<CohortPair, 'group'>) =>
    valueCell(results.get(name, group, 'standardised_difference'), words);
  if (results.find(name, 'all', 'share')) {
    const label = words.tables.withInterval(labels[name], levelText(plan));
    const shares = across(setting, name, label, (get) => shareCell(get('share'), get('count'), words), 0);
    return [withDifferences(shares, pairs, standardised)];
  }
  return [
    block(labels[name]),
    withDifferences(
      across(setting, name, rows.meanSd, (get) => meanSdCell(get, words)),
      pairs,
      standardised,
    ),
    withDifferences(
      across(setting, name, rows.medianRange, (get) => medianRangeCell(get, words)),
      pairs,
    ),
  ];
}

/** The age class of 90 and above enters as 90, and every mean of it says so. */
function agesNote({ results, words }: Setting): readonly string[] {
  return results.find('age', 'all', 'max')?.value === 90 ? [words.tables.notes.ages] : [];
}

/** How many have no value, for each characteristic that anyone lacks. */
function missingNote({ results, words, columns }: Setting, shown: readonly Characteristic[]): readonly string[] {
  const { missingNames, notes } = words.tables;
  const told = shown.flatMap((name) => {
    const missing = (group: string) => valueText(results.get(name, group, 'missing'), words);
    if (results.get(name, 'all', 'missing').value === 0) return [];
    const cohorts = columns.filter(({ group }) => group !== 'all');
    const inCohorts = cohorts.map(({ group, label }) => notes.countIn(label, missing(group)));
    return [notes.missingOf(missingNames[name], missing('all'), inCohorts.join(', '))];
  });
  return told.length === 0 ? [] : [notes.missing(told.join('; '))];
}
