import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import {
  describedShareCell,
  ellipseCell,
  estimateCell,
  eyesCell,
  valueCell,
  vectorCell,
  withoutInterval,
} from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowNote, followUpNotes, outcomeVisit } from './follow-up.js';
import { levelText } from './level.js';
import { block, cohortHead, statisticStub, vertexText } from './rows.js';
import type { Asked, Column, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';
import { type ShownVector, vectorGroup, vectorsShown } from './vectors.js';

/** Vectors in the frame of the incision, and the parts of a toric residual, have tables of their own. */
const told = [
  'corneal_cylinder_before',
  'corneal_cylinder_after',
  'refractive_cylinder_after',
  'induced_right',
  'induced_left',
  'cylinder_prediction_error',
  'cylinder_prediction_error:toric',
] as const;

/** Astigmatism as vectors at the corneal plane: which way it points, how far it scatters, whether it differs from 0. */
export function doubleAngleSummary(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const shown = vectorsShown(results, told);
  if (shown.length === 0) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { notes, titles, vectors } = words.tables;
  const { apart, doubled, otherPlane, plane, regions } = notes.astigmatism;
  const hasApart = shown.some(({ stratum }) => stratum);
  const rows = shown.flatMap((vector) => [block(vectors.named[vector.id].block), ...vectorRows(setting, vector)]);
  const hasNone = rows.some(({ cells }) => cells.some((cell) => cell.text === words.tables.notThisPlane));
  return finish(
    {
      id: 'double-angle-summary',
      title: titles['double-angle-summary'](outcomeVisit(plan, words)),
      head: cohortHead(setting, statisticStub(setting), 'flow:astigmatism', 'analysed'),
      rows,
      footnotes: [
        plane(vertexText(results, plan, words)),
        doubled,
        regions,
        ...(hasApart ? [apart] : []),
        ...(hasNone ? [otherPlane] : []),
        ...followUpNotes(setting, ['astigmatism']),
        ...(shown.some(({ family }) => family === 'cornea') ? [flowNote(setting, 'cornea')] : []),
      ],
    },
    setting,
  );
}

/** Statistics of one vector; a column whose eyes have none of it stays empty. */
function vectorRows(setting: Setting, vector: ShownVector): readonly DraftRow[] {
  const { results, plan, words } = setting;
  const { rows } = words.tables;
  const level = levelText(plan);
  const none: ShownCell = { text: words.tables.notThisPlane, rows: [] };
  const row = (label: string, cell: (get: Asked) => ShownCell): DraftRow => {
    const cellOf = (column: Column): ShownCell => {
      const group = vectorGroup(vector, column.group);
      if (!results.find(vector.measure, group, 'centroid_x')) return none;
      return cell((statistic) => results.get(vector.measure, group, statistic));
    };
    return { label, indent: 1, cells: setting.columns.map(cellOf) };
  };
  const spread = (statistic: string, label: string) =>
    row(label, (get) => valueCell(withoutInterval(get(statistic)), words));
  return [
    row(rows.eyes, (get) => eyesCell(get, words)),
    row(rows.centroid, (get) => vectorCell(get, words)),
    row(rows.centroidRegion(level), (get) => ellipseCell(get, 'centroid_ellipse', words)),
    row(rows.hotelling, (get) => valueCell(get('hotelling_t2'), words)),
    row(rows.p, (get) => valueCell(get('p'), words)),
    spread('sd_x', rows.sdX),
    spread('sd_y', rows.sdY),
    spread('covariance_xy', rows.covariance),
    row(rows.meanMagnitude, (get) => estimateCell(get('mean_magnitude'), words)),
    row(rows.dataRegion(level), (get) => ellipseCell(get, 'data_ellipse', words)),
    row(rows.insideDataRegion, (get) =>
      describedShareCell(get('share_inside_data_ellipse'), get('count_inside_data_ellipse'), words),
    ),
  ];
}
