import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { meanSdCell, medianRangeCell, patientsCell, shareCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { across, block, cohortHead } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';

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
      footnotes: [notes.perEye, ...missingNote(setting, shown)],
    },
    plan,
    words,
  );
}

function characteristicRows(setting: Setting, name: Characteristic): readonly DraftRow[] {
  const { results, words } = setting;
  const { baseline: labels, rows } = words.tables;
  if (results.find(name, 'all', 'share')) {
    return [across(setting, name, labels[name], (get) => shareCell(get('share'), get('count'), words), 0)];
  }
  return [
    block(labels[name]),
    across(setting, name, rows.meanSd, (get) => meanSdCell(get, words)),
    across(setting, name, rows.medianRange, (get) => medianRangeCell(get, words)),
  ];
}

/** Eyes without a value, for each characteristic that has any, in every column. */
function missingNote({ results, words, columns }: Setting, shown: readonly Characteristic[]): readonly string[] {
  const { baseline: labels, notes } = words.tables;
  const told = shown.flatMap((name) => {
    if (results.get(name, 'all', 'missing').value === 0) return [];
    const counts = columns.map(({ group, label }) =>
      notes.missingIn(label, valueCell(results.get(name, group, 'missing'), words).text),
    );
    return [notes.missingOf(labels[name], counts.join(', '))];
  });
  return told.length === 0 ? [] : [notes.missing(told.join('; '))];
}
