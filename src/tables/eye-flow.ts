import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { patientsCell, shareCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowReasons, isExclusion, reasonText } from './follow-up.js';
import { levelText } from './level.js';
import { across, block, cohortHead } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';

/** Families whose flow is shown, in the order of the report. */
const families = ['refraction', 'astigmatism', 'corrected', 'uncorrected'] as const;

/**
 * From eyes operated to eyes analysed: eligible eyes, whose outcome is known, and for each outcome the reasons that
 * leave eligible eyes out of it. Reasons that no eye had are left out, so that each block still adds up.
 */
export function eyeFlow(results: Results, plan: Plan, words: Words): UnnumberedTable {
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { notes, stage, titles } = words.tables;
  return finish(
    {
      id: 'eye-flow',
      title: titles['eye-flow'](),
      head: cohortHead(setting, stage, 'eyes_operated', 'count'),
      rows: [
        ...operatedRows(setting),
        ...eligibleRows(setting),
        ...families.flatMap((family) => familyRows(setting, family)),
        ...complicationRows(setting),
      ],
      footnotes: [notes.flow.zero, notes.flow.due, ...(hasNoCohort(setting) ? [notes.flow.noCohort] : [])],
    },
    setting,
  );
}

/** Whether some eyes are in no cohort, so that the columns do not add up to that of all eyes. */
function hasNoCohort({ results, columns }: Setting): boolean {
  if (columns.length === 1) return false;
  const eyes = columns.map(({ group }) => results.get('eyes_operated', group, 'count').n);
  return eyes.slice(0, -1).reduce((sum, n) => sum + n, 0) !== eyes.at(-1);
}

function operatedRows(setting: Setting): readonly DraftRow[] {
  const { flow } = setting.words.tables;
  return [
    countRow(setting, 'eyes_operated', 'count', flow.operated, 0),
    across(setting, 'eyes_operated', flow.patients, (get) => patientsCell(get('count'))),
    countRow(setting, 'eyes_operated', 'patients_both_eyes', flow.bothEyes, 1),
    ...reasonRows(setting, 'flow:eligible', isExclusion),
  ];
}

function eligibleRows(setting: Setting): readonly DraftRow[] {
  const { plan, words } = setting;
  const { flow, withInterval } = words.tables;
  return [
    countRow(setting, 'flow:eligible', 'analysed', flow.eligible, 0),
    countRow(setting, 'completeness', 'due', flow.due, 1),
    across(setting, 'completeness', withInterval(flow.outcomeKnown, levelText(plan)), (get) =>
      shareCell(get('share'), get('count'), words),
    ),
  ];
}

/** Reasons that concern eligibility are told once, above; here stand those of the outcome itself. */
function familyRows(setting: Setting, family: (typeof families)[number]): readonly DraftRow[] {
  const { flow } = setting.words.tables;
  const measure = `flow:${family}`;
  return [
    block(flow.families[family]),
    ...reasonRows(setting, measure, (statistic) => !isExclusion(statistic)),
    countRow(setting, measure, 'analysed', flow.analysed, 1),
  ];
}

/** All eyes operated, less those whose field is blank; no rows where the export has no such field. */
function complicationRows(setting: Setting): readonly DraftRow[] {
  const { results, words } = setting;
  const { analysed, families: labels, notAnalysed, reasons } = words.tables.flow;
  const measure = 'any_complication';
  if (!results.find(measure, 'all', 'n')?.value) return [];
  const blank = countRow(setting, measure, 'missing', notAnalysed(reasons.not_recorded), 1);
  return [
    block(labels.safety),
    ...(results.get(measure, 'all', 'missing').value === 0 ? [] : [blank]),
    countRow(setting, measure, 'n', analysed, 1),
  ];
}

function reasonRows(setting: Setting, measure: string, wanted: (statistic: string) => boolean): readonly DraftRow[] {
  const { results, columns, words } = setting;
  const { excluded, notAnalysed } = words.tables.flow;
  const anyEye = (statistic: string) => columns.some(({ group }) => results.get(measure, group, statistic).value !== 0);
  return flowReasons(results, measure)
    .filter(({ statistic }) => wanted(statistic) && anyEye(statistic))
    .map(({ statistic }) => {
      const label = (isExclusion(statistic) ? excluded : notAnalysed)(reasonText(statistic, words));
      return countRow(setting, measure, statistic, label, 1);
    });
}

function countRow(setting: Setting, measure: string, statistic: string, label: string, indent: 0 | 1): DraftRow {
  return across(setting, measure, label, (get) => valueCell(get(statistic), setting.words), indent);
}
