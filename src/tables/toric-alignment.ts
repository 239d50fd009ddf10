import { limitText } from '../format/limit.js';
import { shortest } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, meanSdCell, medianRangeCell, rangeCell, shareCell, vectorCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowNote, outcomeVisit } from './follow-up.js';
import { lensTurns as turns } from './lens-turns.js';
import { across, block, cohortHead, provenance, statisticStub, vertexText } from './rows.js';
import type { Asked, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

const parts = [
  'split_residual',
  'split_predicted',
  'split_misalignment',
  'split_rest',
  'split_cornea',
  'split_unexplained',
] as const;

const has = (results: Results, measure: string): boolean => (results.find(measure, 'all', 'n')?.value ?? 0) > 0;

/** Toric lenses: what they are worth at the cornea, where they stand, what is left and from where. */
export function toricAlignment(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  if (![...turns, 'lens_cylinder_at_cornea'].some((measure) => has(results, measure))) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  return finish(
    {
      id: 'toric-alignment',
      title: words.tables.titles['toric-alignment'](outcomeVisit(plan, words)),
      head: cohortHead(setting, statisticStub(setting), 'flow:toric', 'analysed'),
      rows: [
        ...turns.filter((measure) => has(results, measure)).flatMap((measure) => turnRows(setting, measure)),
        ...lensRows(setting),
        ...cylinderRows(setting),
        ...parts.filter((measure) => has(results, measure)).flatMap((measure) => partRows(setting, measure)),
        ...medianRows(setting, 'cylinder_saved_by_alignment'),
        ...medianRows(setting, 'residual_at_best_axis'),
        ...neutralRows(setting),
      ],
      footnotes: notes(setting),
    },
    setting,
  );
}

function rowsOf(setting: Setting, measure: string) {
  const { words } = setting;
  const label = words.tables.astigmatism.outcomes[measure]?.block ?? measure;
  const row = (text: string, cell: (get: Asked) => ShownCell) => across(setting, measure, text, cell);
  return { head: [block(label), row(words.tables.rows.eyes, (get) => eyesCell(get, words))], row };
}

/** Mean, size, range and shares of one turn of the lens. */
function turnRows(setting: Setting, measure: (typeof turns)[number]): readonly DraftRow[] {
  const { words } = setting;
  const { rows } = words.tables.astigmatism;
  const { head, row } = rowsOf(setting, measure);
  const share = (kind: string, limit: number) => (get: Asked) =>
    shareCell(get(`share_${kind}_${limitText(limit)}`), get(`count_${kind}_${limitText(limit)}`), words);
  return [
    ...head,
    row(words.tables.rows.mean, (get) => estimateCell(get('mean'), words)),
    row(words.tables.rows.sd, (get) => estimateCell(get('sd'), words)),
    row(rows.meanAbsolute, (get) => estimateCell(get('mean_absolute'), words)),
    row(rows.medianAbsolute, (get) => estimateCell(get('median_absolute'), words)),
    row(words.tables.rows.range, (get) => rangeCell(get, words)),
    row(rows.within('5'), share('within', 5)),
    row(rows.within('10'), share('within', 10)),
    row(rows.beyond('10'), share('beyond', 10)),
  ];
}

function lensRows(setting: Setting): readonly DraftRow[] {
  const { results, words } = setting;
  if (!has(results, 'lens_cylinder_at_cornea')) return [];
  const { blocks, rows } = words.tables.astigmatism;
  const atCornea = 'lens_cylinder_at_cornea';
  return [
    block(blocks.lens),
    across(setting, atCornea, words.tables.rows.eyes, (get) => eyesCell(get, words)),
    across(setting, atCornea, rows.effect, (get) => meanSdCell(get, words)),
    across(setting, 'lens_plane_ratio', rows.ratio, (get) => medianRangeCell(get, words)),
  ];
}

/** The primary astigmatism outcome of toric lenses. */
function cylinderRows(setting: Setting): readonly DraftRow[] {
  const { results, words } = setting;
  const measure = 'cylinder_prediction_error:toric';
  if (!has(results, measure)) return [];
  const { rows } = words.tables.astigmatism;
  const { head, row } = rowsOf(setting, measure);
  return [
    ...head,
    row(rows.vectorMean, (get) => vectorCell(get, words)),
    row(rows.medianMagnitude, (get) => estimateCell(get('median_magnitude'), words)),
    row(rows.withinDioptre('0.50'), (get) => shareCell(get('share_within_0.50'), get('count_within_0.50'), words)),
    row(rows.withinDioptre('1.00'), (get) => shareCell(get('share_within_1.00'), get('count_within_1.00'), words)),
  ];
}

function partRows(setting: Setting, measure: (typeof parts)[number]): readonly DraftRow[] {
  const { words } = setting;
  const { rows } = words.tables.astigmatism;
  const { head, row } = rowsOf(setting, measure);
  return [
    ...head,
    row(rows.vectorMean, (get) => vectorCell(get, words)),
    row(rows.medianMagnitude, (get) => estimateCell(get('median_magnitude'), words)),
  ];
}

function medianRows(setting: Setting, measure: string): readonly DraftRow[] {
  const { results, words } = setting;
  if (!has(results, measure)) return [];
  const { head, row } = rowsOf(setting, measure);
  return [...head, row(words.tables.astigmatism.rows.median, (get) => estimateCell(get('median'), words))];
}

/** Spherical equivalents of lenses that stand well and that do not, over all eyes: a turn changes neither. */
function neutralRows(setting: Setting): readonly DraftRow[] {
  const { results, columns, words } = setting;
  const groups = [...new Set(results.rows.map(({ group }) => group))].filter((group) => /^misalignment=/.test(group));
  if (!groups.some((group) => results.find('prediction_error', group, 'n')?.value)) return [];
  const { blocks, strata } = words.tables.astigmatism;
  const labels: Readonly<Record<string, string>> = strata;
  const none: ShownCell = { text: words.tables.notThisPlane, rows: [] };
  const rowOf = (group: string): DraftRow => ({
    label: labels[group.replace('misalignment=', '')] ?? group,
    indent: 1,
    cells: columns.map((column) =>
      column.group === 'all' ? estimateCell(results.get('prediction_error', group, 'mean'), words) : none,
    ),
  });
  return [block(blocks.neutral), ...groups.map(rowOf)];
}

/** Which turns the data allow, how the label came to the cornea, what the parts are. */
function notes(setting: Setting): readonly string[] {
  const { results, plan, words } = setting;
  const text = words.tables.astigmatism;
  const named = (holds: boolean) =>
    turns
      .filter((measure) => has(results, measure) === holds)
      .map((measure) => text.turns[measure])
      .join(', ');
  const { lens_plane_ratio: ratio } = plan.policies;
  const effect = plan.predictions.incision_effect;
  return [
    text.notes.turns,
    ...(named(true) === '' ? [] : [text.notes.available(named(true))]),
    ...(named(false) === '' ? [] : [text.notes.notAvailable(named(false))]),
    text.notes.repositioned(provenance(setting, 'repositioned')),
    ratio === 'each-eye' ? text.notes.eachEye : text.notes.declaredRatio(shortest(ratio)),
    text.notes.split,
    effect ? text.notes.planned(shortest(effect.magnitude)) : text.notes.unplanned,
    text.notes.meanIsNotCentroid,
    text.notes.bestAxis,
    text.notes.neutralTurn,
    words.tables.notes.astigmatism.plane(vertexText(results, plan, words)),
    words.tables.notes.visit(outcomeVisit(plan, words)),
    flowNote(setting, 'toric'),
  ];
}
