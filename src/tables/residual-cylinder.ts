import { fixed } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, rangeCell, shareCell, vectorCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { limitsOf } from './error-rows.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { levelText } from './level.js';
import { block } from './rows.js';
import type { Asked, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

/** The three columns: two magnitudes in their own planes, and the vector after surgery, never mixed in one column. */
const before = 'corneal_cylinder_magnitude_before';
const recorded = 'refractive_cylinder_after_recorded';
const vector = 'refractive_cylinder_after';
const measures = [before, recorded, vector] as const;
type Measure = (typeof measures)[number];

/** Cylinder before and after surgery: magnitudes and shares, one column a plane, one block a cohort. */
export function residualCylinder(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  if (!results.find(recorded, 'all', 'n')?.value) return undefined;
  const setting = { results, plan, words, columns: cohortColumns(results, plan, words) };
  const { blocks, notes, statistic, titles } = words.tables;
  const heads = [blocks.cornealBefore, blocks.refractiveRecorded, blocks.refractiveAfter];
  const countOf = (measure: Measure) => results.get(measure, 'all', 'n').n;
  return finish(
    {
      id: 'residual-cylinder',
      title: titles['residual-cylinder'](outcomeVisit(plan, words)),
      head: [{ text: statistic }, ...measures.map((measure, i) => ({ text: `${heads[i]}`, n: countOf(measure) }))],
      rows: setting.columns.flatMap(({ group, label }) => [block(label), ...groupRows(setting, group)]),
      footnotes: [
        notes.astigmatism.recorded,
        notes.astigmatism.plane(fixed(plan.policies.vertex_mm, 1)),
        notes.refraction.thresholds,
        notes.astigmatism.otherPlane,
        ...followUpNotes(setting, ['refraction', 'astigmatism']),
      ],
    },
    plan,
    words,
  );
}

function groupRows({ results, plan, words }: Setting, group: string): readonly DraftRow[] {
  const { rows } = words.tables;
  const level = levelText(plan);
  const none: ShownCell = { text: words.tables.notThisPlane, rows: [] };
  const row = (label: string, of: readonly Measure[], cell: (get: Asked, measure: Measure) => ShownCell): DraftRow => ({
    label,
    indent: 1,
    cells: measures.map((measure) =>
      of.includes(measure) ? cell((statistic) => results.get(measure, group, statistic), measure) : none,
    ),
  });
  const magnitudes = [before, recorded] as const;
  const share = (limit: string) =>
    row(rows.withinMagnitude(fixed(Number(limit), 2), level), [recorded], (get) =>
      shareCell(get(`share_within_${limit}`), get(`count_within_${limit}`), words),
    );
  return [
    row(rows.eyes, measures, (get) => eyesCell(get, words)),
    row(rows.meanMagnitudeInterval(level), measures, (get, measure) =>
      estimateCell(get(measure === vector ? 'mean_magnitude' : 'mean'), words),
    ),
    row(rows.median, magnitudes, (get) => estimateCell(get('median'), words)),
    row(rows.range, magnitudes, (get) => rangeCell(get, words)),
    ...limitsOf({ results }, recorded).map(share),
    row(rows.centroid, [vector], (get) => vectorCell(get, words)),
  ];
}
