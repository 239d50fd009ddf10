import { count } from '../format/number.js';
import { complicationPrefix } from '../measures/safety.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, meanSdCell, quartilesCell, shareCell, valueCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowNote } from './follow-up.js';
import { levelText } from './level.js';
import { across, block, cohortHead, statisticStub } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';
import { valueText } from './value-text.js';

/** Fields that tell of safety; an export that maps none of them has no such table. */
const fields = [
  'complication',
  'anterior_tear',
  'posterior_capsule_rupture',
  'vitreous_loss',
  'capsulotomy_complete',
  'return_to_theatre',
] as const;

/** Complications over all operated eyes with exact intervals, and the endothelium. */
export function safety(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const hasCells = (results.find('endothelial_loss', 'all', 'n')?.value ?? 0) > 0;
  if (!columnsOf(plan).some(({ field }) => isSafety(field)) && !hasCells) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const events = eventsOf(setting);
  const { blocks, titles } = words.tables.safety;
  return finish(
    {
      id: 'safety',
      title: titles.safety(),
      head: cohortHead(setting, statisticStub(setting), 'eyes_operated', 'count'),
      rows: [
        ...(events.length === 0 ? [] : [block(blocks.complications)]),
        ...events.flatMap((measure) => eventRows(setting, measure)),
        ...(hasCells ? endotheliumRows(setting) : []),
      ],
      footnotes: [...(events.length === 0 ? [] : eventNotes(setting, events)), ...(hasCells ? cellNotes(setting) : [])],
    },
    setting,
  );
}

const isSafety = (field: string): boolean => (fields as readonly string[]).includes(field);

function columnsOf({ sources }: Plan) {
  return sources.flatMap(({ blocks }) => blocks.flatMap(({ columns }) => columns));
}

/** Measures of safety that the audit has, in the order of the registry. */
function eventsOf({ results, plan }: Setting): readonly string[] {
  if (!columnsOf(plan).some(({ field }) => isSafety(field))) return [];
  return results.rows.flatMap(({ measure, group, statistic }) => {
    const isEvent =
      /^(any_complication|capsulotomy_incomplete|return_to_theatre)$/.test(measure) ||
      measure.startsWith(complicationPrefix);
    return isEvent && group === 'all' && statistic === 'n' ? [measure] : [];
  });
}

/** What happens to an eye or does not, as readers call it. */
export function eventName(measure: string, { tables }: Words): string {
  if (measure.startsWith(complicationPrefix))
    return tables.safety.complication(measure.slice(complicationPrefix.length));
  return tables.outcomes[measure]?.name ?? measure;
}

/** A share, and where any cohort has eyes without a record, how many. */
function eventRows(setting: Setting, measure: string): readonly DraftRow[] {
  const { results, words, columns } = setting;
  const { rows } = words.tables.safety;
  const unknown = columns.some(({ group }) => results.get(measure, group, 'missing').value !== 0);
  return [
    across(setting, measure, rows.event(eventName(measure, words)), (get) =>
      shareCell(get('share'), get('count'), words),
    ),
    ...(unknown ? [across(setting, measure, rows.notRecorded, (get) => valueCell(get('missing'), words))] : []),
  ];
}

function endotheliumRows(setting: Setting): readonly DraftRow[] {
  const { plan, words } = setting;
  const { rows } = words.tables;
  const { blocks, rows: own } = words.tables.safety;
  const loss = 'endothelial_loss';
  return [
    block(blocks.endothelium),
    across(setting, loss, rows.eyes, (get) => eyesCell(get, words)),
    across(setting, 'endothelium_before', `${blocks.before}: ${rows.meanSd}`, (get) => meanSdCell(get, words)),
    across(setting, 'endothelium_after', `${blocks.after}: ${rows.meanSd}`, (get) => meanSdCell(get, words)),
    across(setting, loss, `${words.tables.safety.compared.endothelial_loss?.block}: ${rows.meanSd}`, (get) =>
      meanSdCell(get, words),
    ),
    across(setting, loss, own.medianQuartiles, (get) => quartilesCell(get, words)),
    across(setting, loss, own.typical(levelText(plan)), (get) => estimateCell(get('geometric_mean'), words)),
  ];
}

function eventNotes(setting: Setting, events: readonly string[]): readonly string[] {
  const { results, plan, words } = setting;
  const { notes } = words.tables.safety;
  const declared = plan.sources.flatMap(({ blocks }) => blocks.flatMap((one) => Object.keys(one.blank_means)));
  const blank = [...new Set(declared)].filter(isSafety);
  return [
    notes.denominator(count(results.get('eyes_operated', 'all', 'count').n)),
    blank.length === 0 ? notes.blankMissing : notes.blankDeclared(blank.join(', ')),
    ...zeroNote(setting, events),
    ...(events.includes('capsulotomy_incomplete') ? [notes.apart] : []),
    notes.rare,
  ];
}

/** The rule for what no event still allows, for every cell of the table without one. */
function zeroNote({ results, plan, words, columns }: Setting, events: readonly string[]): readonly string[] {
  const { notes } = words.tables.safety;
  const told = events.flatMap((measure) =>
    columns.flatMap(({ group, label }) => {
      const row = results.find(measure, group, 'share_upper_one_sided');
      if (row?.value === undefined) return [];
      return [notes.zeroOf(eventName(measure, words), label, count(row.patients), valueText(row, words))];
    }),
  );
  if (told.length === 0) return [];
  const list = told.join('; ');
  return [plan.statistics.confidence === 0.95 ? notes.zero(list) : notes.zeroLevel(levelText(plan), list)];
}

function cellNotes(setting: Setting): readonly string[] {
  const { results, words, columns } = setting;
  const { notes } = words.tables.safety;
  const months = columns.flatMap(({ group, label }) => {
    const text = (statistic: string) => valueText(results.get('follow_up_months:endothelium', group, statistic), words);
    if (!results.find('follow_up_months:endothelium', group, 'n')?.value) return [];
    return [notes.monthsOf(label, text('median'), text('min'), text('max'))];
  });
  return [
    notes.loss,
    months.length === 0 ? notes.monthsUnknown : notes.months(months.join('; ')),
    notes.regression,
    flowNote(setting, 'endothelium'),
  ];
}
