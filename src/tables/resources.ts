import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, quartilesCell, rangeCell, valueCell } from './cells.js';
import { cohortPairs } from './cohort-pairs.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { fieldLabel } from './groups.js';
import { machinesOf } from './machines.js';
import { across, block, cohortHead, statisticStub } from './rows.js';
import type { Asked, Column, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';
import { strataColumns } from './strata.js';

const measures = ['case_time_min', 'laser_time_s', 'phaco_time_s', 'effective_energy'] as const;
type Measure = (typeof measures)[number];

/** Times and energies of all operated eyes: medians, shifts between cohorts, and medians by nucleus grade and machine. */
export function resources(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const shown = measures.filter((measure) => results.find(measure, 'all', 'n')?.value);
  if (shown.length === 0) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  return finish(
    {
      id: 'resources',
      title: words.tables.safety.titles.resources(),
      head: cohortHead(setting, statisticStub(setting), 'eyes_operated', 'count'),
      rows: shown.flatMap((measure) => measureRows(setting, measure)),
      footnotes: notesOf(setting, shown),
    },
    setting,
  );
}

function measureRows(setting: Setting, measure: Measure): readonly DraftRow[] {
  const { results, words } = setting;
  const { outcomes, rows, safety } = words.tables;
  const row = (label: string, cell: (get: Asked) => ShownCell) => across(setting, measure, label, cell);
  const zeros = results.get(measure, 'all', 'count_zero').value !== 0;
  return [
    block(outcomes[measure]?.block ?? measure),
    row(rows.eyes, (get) => eyesCell(get, words)),
    row(rows.median, (get) => estimateCell(get('median'), words)),
    row(safety.rows.medianQuartiles, (get) => quartilesCell(get, words)),
    row(rows.range, (get) => rangeCell(get, words)),
    ...(zeros ? [row(safety.rows.zero, (get) => valueCell(get('count_zero'), words))] : []),
    ...shiftRows(setting, measure),
    ...['nucleus_grade', 'machine'].flatMap((field) => strataRows(setting, measure, field)),
  ];
}

const none: ShownCell = { text: '', rows: [] };

/** The Hodges–Lehmann shift of each cohort against the reference, in the column of the cohort. */
function shiftRows({ results, words, columns }: Setting, measure: Measure): readonly DraftRow[] {
  return cohortPairs(results, words).flatMap(({ group, compared, reference }) => {
    const row = results.find(measure, group, 'shift');
    if (!row) return [];
    const cell = ({ label }: Column) => (label === compared.label ? estimateCell(row, words) : none);
    const label = words.tables.safety.rows.shift(compared.label, reference.label);
    return [{ label, indent: 1 as const, cells: columns.map(cell) }];
  });
}

/** Medians of all eyes in each group of a field, where there are several. */
function strataRows(setting: Setting, measure: Measure, field: string): readonly DraftRow[] {
  const { results, words, columns } = setting;
  const groups = strataColumns(results, measure, field, words);
  if (groups.length < 2) return [];
  return groups.map(({ group, label }) => ({
    label: words.tables.safety.rows.medianIn(`${fieldLabel(field, words)} ${label}`),
    indent: 1 as const,
    cells: columns.map((column) =>
      column.group === 'all' ? estimateCell(results.get(measure, group, 'median'), words) : none,
    ),
  }));
}

function notesOf({ results, words }: Setting, shown: readonly Measure[]): readonly string[] {
  const { notes } = words.tables.safety;
  const machines = machinesOf(results, words);
  return [
    ...(shown.includes('effective_energy') ? [notes.machineDefined] : []),
    machines.length > 0 ? notes.machines(machines.join(', ')) : notes.noMachine,
    ...(cohortPairs(results, words).length > 0 ? [notes.shift, notes.surgeons] : []),
  ];
}
