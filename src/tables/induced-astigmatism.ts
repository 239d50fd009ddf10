import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { ellipseCell, estimateCell, eyesCell, valueCell, withoutInterval } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { finish } from './finish.js';
import { flowNote, outcomeVisit } from './follow-up.js';
import { fieldLabel } from './groups.js';
import { levelText } from './level.js';
import { across, block, statisticStub } from './rows.js';
import type { Asked, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';
import { strataColumns } from './strata.js';
import { valueText } from './value-text.js';

const frame = 'induced_in_incision_frame';

/** What surgery did to the cornea along and across the incision, by its meridian and width. */
export function inducedAstigmatism(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  if (!results.find(frame, 'all', 'n')?.value) return undefined;
  const strata = (field: string) =>
    strataColumns(results, frame, field, words).map(({ group, label }) => ({
      group,
      label: words.tables.astigmatism.stratum(fieldLabel(field, words), label),
    }));
  const cohorts = cohortColumns(results, plan, words);
  const columns = [...cohorts, ...['incision_sector', 'incision_width'].flatMap(strata)];
  const setting = { results, plan, words, columns };
  const { notes } = words.tables.astigmatism;
  return finish(
    {
      id: 'induced-astigmatism',
      title: words.tables.titles['induced-astigmatism'](outcomeVisit(plan, words)),
      head: [
        { text: statisticStub(setting) },
        ...columns.map(({ group, label }) => ({ text: label, n: results.get(frame, group, 'n').n })),
      ],
      rows: [
        ...polarRows(setting, 'induced_along_incision'),
        ...polarRows(setting, 'induced_torque'),
        ...frameRows(setting),
      ],
      footnotes: [
        notes.frame,
        notes.meanIsNotCentroid,
        notes.sectors,
        notes.signs,
        words.tables.notes.visit(outcomeVisit(plan, words)),
        flowNote(setting, 'cornea'),
      ],
    },
    { ...setting, columns: cohorts },
  );
}

function polarRows(setting: Setting, measure: string): readonly DraftRow[] {
  const { words } = setting;
  const { outcomes, rows } = words.tables.astigmatism;
  return [
    block(outcomes[measure]?.block ?? measure),
    across(setting, measure, words.tables.rows.eyes, (get) => eyesCell(get, words)),
    across(setting, measure, rows.mean, (get) => estimateCell(get('mean'), words)),
    across(setting, measure, words.tables.rows.sd, (get) => estimateCell(get('sd'), words)),
    across(setting, measure, rows.median, (get) => estimateCell(get('median'), words)),
  ];
}

/** 'along −0.21; torque 0.03': a centroid of the incision frame has no meridian. */
function alongCell(get: Asked, words: Words): ShownCell {
  const [x, y] = [withoutInterval(get('centroid_x')), withoutInterval(get('centroid_y'))];
  if (x.value === undefined) return valueCell(x, words);
  return { text: `${valueText(x, words)}; ${valueText(y, words)}`, rows: [x, y] };
}

function frameRows(setting: Setting): readonly DraftRow[] {
  const { plan, words } = setting;
  const { outcomes, rows } = words.tables.astigmatism;
  const row = (label: string, cell: (get: Asked) => ShownCell) => across(setting, frame, label, cell);
  return [
    block(outcomes[frame]?.block ?? frame),
    row(rows.centroidAlong, (get) => alongCell(get, words)),
    row(rows.regionOf(levelText(plan)), (get) => ellipseCell(get, 'centroid_ellipse', words)),
    row(rows.test, (get) => valueCell(get('hotelling_t2'), words)),
    row(rows.p, (get) => valueCell(get('p'), words)),
    row(rows.centroidLength, (get) => valueCell(withoutInterval(get('centroid_magnitude')), words)),
    row(rows.arithmeticMean, (get) => estimateCell(get('mean_magnitude'), words)),
  ];
}
