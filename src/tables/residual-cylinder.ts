import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, rangeCell, vectorCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { limitsOf, withinCell } from './error-rows.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { block, statisticStub, vertexText } from './rows.js';
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
  const { blocks, notes, titles } = words.tables;
  const heads = [blocks.cornealBefore, blocks.refractiveRecorded, blocks.refractiveAfter];
  const countOf = (measure: Measure) => results.get(measure, 'all', 'n').n;
  return finish(
    {
      id: 'residual-cylinder',
      title: titles['residual-cylinder'](outcomeVisit(plan, words)),
      head: [
        { text: statisticStub(setting) },
        ...measures.map((measure, i) => ({ text: `${heads[i]}`, n: countOf(measure) })),
      ],
      rows: setting.columns.flatMap(({ group, label }) => [block(label), ...groupRows(setting, group)]),
      footnotes: [
        notes.astigmatism.recorded,
        notes.astigmatism.plane(vertexText(results, plan, words)),
        notes.refraction.thresholds,
        notes.astigmatism.otherPlane,
        ...followUpNotes(setting, ['refraction', 'astigmatism']),
      ],
    },
    setting,
  );
}

function groupRows({ results, words }: Setting, group: string): readonly DraftRow[] {
  const { rows } = words.tables;
  const none: ShownCell = { text: words.tables.notThisPlane, rows: [] };
  const row = (label: string, of: readonly Measure[], cell: (get: Asked, measure: Measure) => ShownCell): DraftRow => {
    const get = (measure: Measure) => (statistic: string) => results.get(measure, group, statistic);
    const cellOf = (measure: Measure) => (of.includes(measure) ? cell(get(measure), measure) : none);
    return { label, indent: 1, cells: measures.map(cellOf) };
  };
  const magnitudes = [before, recorded] as const;
  const mean = (get: Asked, measure: Measure) =>
    estimateCell(get(measure === vector ? 'mean_magnitude' : 'mean'), words);
  const counted = (limit: string) => magnitudes.filter((measure) => limitsOf({ results }, measure).includes(limit));
  return [
    row(rows.eyes, measures, (get) => eyesCell(get, words)),
    row(rows.meanMagnitude, measures, mean),
    row(rows.median, magnitudes, (get) => estimateCell(get('median'), words)),
    row(rows.range, magnitudes, (get) => rangeCell(get, words)),
    ...limitsOf({ results }, recorded).map((limit) =>
      row(rows.withinMagnitude(limit), counted(limit), (get) => withinCell(get, limit, words)),
    ),
    row(rows.centroid, [vector], (get) => vectorCell(get, words)),
  ];
}
