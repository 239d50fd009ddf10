import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { ellipseCell, eyesCell, insideCell, valueCell, vectorCell, withoutInterval } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { levelText } from './level.js';
import { across, block, cohortHead, vertexText } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';

const vectors = [
  { measure: 'corneal_cylinder_before', label: 'cornealBefore' },
  { measure: 'refractive_cylinder_after', label: 'refractiveAfter' },
] as const;

/** Astigmatism as vectors at the corneal plane: which way it points, how far it scatters, whether it differs from 0. */
export function doubleAngleSummary(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const shown = vectors.filter(({ measure }) => results.find(measure, 'all', 'n')?.value);
  if (shown.length === 0) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { blocks, notes, titles } = words.tables;
  const { doubled, plane, regions } = notes.astigmatism;
  return finish(
    {
      id: 'double-angle-summary',
      title: titles['double-angle-summary'](outcomeVisit(plan, words)),
      head: cohortHead(setting, words.tables.statistic, 'flow:astigmatism', 'analysed'),
      rows: shown.flatMap(({ measure, label }) => [block(blocks[label]), ...vectorRows(setting, measure)]),
      footnotes: [
        plane(vertexText(results, plan, words)),
        doubled,
        regions,
        ...followUpNotes(setting, ['astigmatism']),
      ],
    },
    setting,
  );
}

function vectorRows(setting: Setting, measure: string): readonly DraftRow[] {
  const { plan, words } = setting;
  const { rows } = words.tables;
  const level = levelText(plan);
  const test = (statistic: string, label: string) =>
    across(setting, measure, label, (get) => valueCell(get(statistic), words));
  const spread = (statistic: string, label: string) =>
    across(setting, measure, label, (get) => valueCell(withoutInterval(get(statistic)), words));
  return [
    across(setting, measure, rows.eyes, (get) => eyesCell(get, words)),
    across(setting, measure, rows.centroid, (get) => vectorCell(get, words)),
    across(setting, measure, rows.centroidRegion(level), (get) => ellipseCell(get, 'centroid_ellipse', words)),
    test('hotelling_t2', rows.hotelling),
    test('p', rows.p),
    spread('sd_x', rows.sdX),
    spread('sd_y', rows.sdY),
    spread('covariance_xy', rows.covariance),
    spread('mean_magnitude', rows.meanMagnitude),
    across(setting, measure, rows.dataRegion(level), (get) => ellipseCell(get, 'data_ellipse', words)),
    across(setting, measure, rows.insideDataRegion, (get) => insideCell(get('share_inside_data_ellipse'), words)),
  ];
}
