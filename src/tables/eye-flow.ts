import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { shareCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowReasons, reasonLabel } from './follow-up.js';
import { levelText } from './level.js';
import { across, cohortHead } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';

/** Families whose flow is shown, in the order of the report; safety starts from all eyes operated. */
const families = ['refraction', 'astigmatism', 'corrected', 'uncorrected', 'safety'] as const;

/**
 * From eyes operated to eyes analysed: eligible eyes, whose outcome is known, and for each outcome the reasons that
 * leave eligible eyes out of it. Reasons that no eye had are left out, so that each block still adds up.
 */
export function eyeFlow(results: Results, plan: Plan, words: Words): UnnumberedTable {
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { flow, notes, stage, titles } = words.tables;
  return finish(
    {
      id: 'eye-flow',
      title: titles['eye-flow'](),
      head: cohortHead(setting, stage, 'eyes_operated', 'count'),
      rows: [
        ...operatedRows(setting),
        ...reasonRows(setting, 'flow:eligible', () => true),
        countRow(setting, 'flow:eligible', 'analysed', flow.eligible, 0),
        ...completenessRows(setting),
        ...families.flatMap((family) => familyRows(setting, family)),
      ],
      footnotes: [notes.flow.zero, notes.flow.due],
    },
    plan,
    words,
  );
}

function operatedRows(setting: Setting): readonly DraftRow[] {
  const { flow } = setting.words.tables;
  return [
    countRow(setting, 'eyes_operated', 'count', flow.operated, 0),
    countRow(setting, 'eyes_operated', 'patients', flow.patients, 1),
    countRow(setting, 'eyes_operated', 'patients_both_eyes', flow.bothEyes, 1),
  ];
}

function completenessRows(setting: Setting): readonly DraftRow[] {
  const { plan, words } = setting;
  const label = words.tables.flow.outcomeKnown(levelText(plan));
  return [
    countRow(setting, 'completeness', 'due', words.tables.flow.due, 1),
    across(setting, 'completeness', label, (get) => shareCell(get('share'), get('count'), words)),
  ];
}

/** Reasons that concern eligibility are told once, above; here follow those of the outcome itself. */
function familyRows(setting: Setting, family: (typeof families)[number]): readonly DraftRow[] {
  const measure = `flow:${family}`;
  const ofOutcome = (statistic: string) => !statistic.startsWith('excluded:') && statistic !== 'one_eye_rule';
  return [
    countRow(setting, measure, 'analysed', setting.words.tables.flow.families[family], 0),
    ...reasonRows(setting, measure, ofOutcome),
  ];
}

function reasonRows(setting: Setting, measure: string, wanted: (statistic: string) => boolean): readonly DraftRow[] {
  const { results, columns, words } = setting;
  const anyEye = (statistic: string) => columns.some(({ group }) => results.get(measure, group, statistic).value !== 0);
  return flowReasons(results, measure)
    .filter(({ statistic }) => wanted(statistic) && anyEye(statistic))
    .map(({ statistic }) => countRow(setting, measure, statistic, reasonLabel(statistic, words), 1));
}

function countRow(setting: Setting, measure: string, statistic: string, label: string, indent: 0 | 1): DraftRow {
  return across(setting, measure, label, (get) => valueCell(get(statistic), setting.words), indent);
}
