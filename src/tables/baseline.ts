import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { meanSdCell, medianRangeCell, patientsCell, shareCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { levelText } from './level.js';
import { across, block, cohortHead } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';
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

/**
 * What the eligible eyes were before surgery, by cohort. A characteristic that no eye has is left out. No p values:
 * cohorts are described here, not tested.
 */
export function baseline(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const eligible = 'flow:eligible';
  if (results.get(eligible, 'all', 'analysed').value === 0) return undefined;
  const shown = characteristics.filter((name) => results.find(name, 'all', 'n')?.value);
  const { baseline: labels, characteristic, notes, titles } = words.tables;
  return finish(
    {
      id: 'baseline',
      title: titles.baseline(),
      head: cohortHead(setting, characteristic, eligible, 'analysed'),
      rows: [
        across(setting, eligible, labels.patients, (get) => patientsCell(get('analysed')), 0),
        ...shown.flatMap((name) => characteristicRows(setting, name)),
      ],
      footnotes: [notes.perEye, ...agesNote(setting), ...missingNote(setting, shown)],
    },
    setting,
  );
}

function characteristicRows(setting: Setting, name: Characteristic): readonly DraftRow[] {
  const { results, plan, words } = setting;
  const { baseline: labels, rows } = words.tables;
  if (results.find(name, 'all', 'share')) {
    const label = words.tables.withInterval(labels[name], levelText(plan));
    return [across(setting, name, label, (get) => shareCell(get('share'), get('count'), words), 0)];
  }
  return [
    block(labels[name]),
    across(setting, name, rows.meanSd, (get) => meanSdCell(get, words)),
    across(setting, name, rows.medianRange, (get) => medianRangeCell(get, words)),
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
